/** The program's own file dialog, used as a person uses it. */
import { expect, type Locator, type Page } from '@playwright/test';

export class FilePanel {
  readonly dialog: Locator;

  constructor(private readonly page: Page) {
    this.dialog = page.getByRole('dialog');
  }

  /** Opens the file called `name` in the folder that shows. */
  async open(name: string): Promise<void> {
    await this.dialog.getByRole('button', { name, exact: true }).dblclick();
  }

  /** Opens a project and waits until it is the one that is shown; `project` is its own name. */
  async openProject(name: string, project: string): Promise<void> {
    await this.open(name);
    await expect(this.page.getByRole('heading', { level: 1 })).toHaveText(project);
  }

  async saveAs(name: string): Promise<void> {
    await this.dialog.getByLabel('Name').fill(name);
    await this.saveHere();
  }

  /** Saves under the name that is there. */
  async saveHere(): Promise<void> {
    await this.dialog.getByRole('button', { name: 'Save here' }).click();
  }

  /** Answers the question about what is there already; `what` is its title. */
  async replace(what: string | RegExp, isAgreed: boolean): Promise<void> {
    const question = this.page.getByRole('dialog', { name: what });
    const name = isAgreed ? /^Replace( all)?$/ : /^(Keep what is there|Cancel)$/;
    await question.getByRole('button', { name }).click();
  }

  /** Into a folder of the one that shows; nowhere else if the panel begins in it, as it was the last one. */
  async intoFolder(name: string): Promise<void> {
    const folder = this.dialog.getByLabel('Folder', { exact: true });
    await expect(folder).not.toHaveValue('');
    if ((await folder.inputValue()).endsWith(`/${name}`)) return;
    await this.dialog.getByRole('button', { name: `${name}, folder` }).click();
    await expect(this.dialog.getByLabel('Folder', { exact: true })).toHaveValue(new RegExp(`${name}$`));
  }

  async chooseFolder(): Promise<void> {
    await this.dialog.getByRole('button', { name: 'Choose this folder' }).click();
  }

  /** Presses a button that exports, and chooses the folder `into` of the one that shows. */
  async exportInto(button: string, into: string): Promise<void> {
    await this.page.getByRole('button', { name: button }).click();
    await this.intoFolder(into);
    await this.chooseFolder();
  }
}
