import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  applyChange,
  commit,
  isUnsaved,
  markSaved,
  redo,
  redoName,
  sampleProject,
  startHistory,
  undo,
  undoName,
  type History,
  type Project,
} from '@shared/project/index.ts';
import { expectChangeLaws } from './change-laws.ts';
import { anyStep, paintStep } from './changes.ts';

const RUNS = { numRuns: 200, seed: 40 };

describe('any change that a person makes', () => {
  it('keeps the laws of changes, one after another', () => {
    fc.assert(
      fc.property(fc.array(anyStep, { maxLength: 6 }), (steps) => {
        steps.reduce((project, step) => expectChangeLaws(project, step(project)), sampleProject());
      }),
      RUNS,
    );
  });
});

/** What undo must give back: every state in order, and which one stands in the file. */
class Model {
  constructor(
    readonly states: Project[] = [sampleProject()],
    public at = 0,
    public saved: Project | null = states[0] as Project,
  ) {}

  get now(): Project {
    return this.states[this.at] as Project;
  }

  change(next: Project): void {
    this.states.splice(this.at + 1, Infinity, next);
    this.at++;
  }
}

interface Real {
  history: History;
}

class MakeChange implements fc.Command<Model, Real> {
  constructor(private readonly step: (project: Project) => Parameters<typeof applyChange>[1]) {}

  check = (): boolean => true;

  run(model: Model, real: Real): void {
    const change = this.step(model.now);
    real.history = commit(real.history, change);
    // A stroke that changes no cell is no step.
    if (change.edits.every((edit) => edit.kind === 'paint' && edit.patch.at.length === 0)) return;
    model.change(applyChange(model.now, change));
    expect(undoName(real.history)).toBe(change.name);
    expect(redoName(real.history)).toBeNull();
    expectSame(model, real);
  }

  toString = (): string => JSON.stringify(this.step(sampleProject()));
}

class Undo implements fc.Command<Model, Real> {
  check = (): boolean => true;

  run(model: Model, real: Real): void {
    const name = undoName(real.history);
    real.history = undo(real.history);
    if (model.at > 0) {
      model.at--;
      expect(redoName(real.history)).toBe(name);
    } else expect(name).toBeNull();
    expectSame(model, real);
  }

  toString = (): string => 'undo';
}

class Redo implements fc.Command<Model, Real> {
  check = (): boolean => true;

  run(model: Model, real: Real): void {
    real.history = redo(real.history);
    if (model.at < model.states.length - 1) model.at++;
    expectSame(model, real);
  }

  toString = (): string => 'redo';
}

class Save implements fc.Command<Model, Real> {
  check = (): boolean => true;

  run(model: Model, real: Real): void {
    real.history = markSaved(real.history);
    model.saved = model.now;
    expectSame(model, real);
  }

  toString = (): string => 'save';
}

function expectSame(model: Model, real: Real): void {
  expect(real.history.project).toEqual(model.now);
  // Exactly the state in the file is saved; one that merely looks like it may count as unsaved, never the reverse.
  if (model.saved === model.now) expect(isUnsaved(real.history)).toBe(false);
  else if (!sameProject(model.saved, model.now)) expect(isUnsaved(real.history)).toBe(true);
}

function sameProject(a: Project | null, b: Project): boolean {
  try {
    expect(a).toEqual(b);
    return true;
  } catch {
    return false;
  }
}

describe('undo and redo', () => {
  it('lead through every state in order, and the saved mark follows the state in the file', () => {
    const commands = fc.commands(
      [
        anyStep.map((step) => new MakeChange(step)),
        fc.constant(new Undo()),
        fc.constant(new Redo()),
        fc.constant(new Save()),
      ],
      { maxCommands: 30 },
    );
    fc.assert(
      fc.property(commands, (sequence) => {
        fc.modelRun(() => ({ model: new Model(), real: { history: startHistory(sampleProject()) } }), sequence);
      }),
      RUNS,
    );
  });

  it('take a whole gesture as one step, however many cells it touched again', () => {
    fc.assert(
      fc.property(fc.array(paintStep, { minLength: 1, maxLength: 8 }), (steps) => {
        const start = startHistory(sampleProject());
        const stroke = steps.reduce((history, step) => commit(history, step(history.project), 'stroke 1'), start);
        if (stroke === start) return;
        expect(stroke.past).toHaveLength(1);
        const back = undo(stroke);
        expect(back.project).toEqual(start.project);
        expect(isUnsaved(back)).toBe(false);
        expect(redo(back).project).toEqual(stroke.project);
      }),
      RUNS,
    );
  });
});
