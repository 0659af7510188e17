/** From a message off the wire to a service and back; both shells call nothing else. */
import type { z } from 'zod';
import { contract, type Method, type Params, type Services } from '@shared/host/index.ts';
import { problemOf, type Outcome, type Problem } from '@shared/problem/index.ts';

/** Runs `method` with `rawParams`, both unchecked. Never rejects. */
export async function dispatch(services: Services, method: string, rawParams: unknown): Promise<Outcome<unknown>> {
  if (!isMethod(method)) return invalid(method, 'there is no such request');
  const params = contract[method].params.safeParse(rawParams);
  if (!params.success) return invalid(method, firstFault(params.error));
  try {
    const answer: unknown = await run(services, method, params.data);
    const result = contract[method].result.safeParse(answer);
    return result.success ? { ok: true, value: result.data } : invalid(method, firstFault(result.error));
  } catch (thrown) {
    return { ok: false, problem: problemOf(thrown) };
  }
}

function isMethod(text: string): text is Method {
  return Object.hasOwn(contract, text);
}

/** `params` has passed the schema of `method`, which the compiler cannot follow across the table. */
function run(services: Services, method: Method, params: unknown): Promise<unknown> {
  return (services[method] as (params: Params<Method>) => Promise<unknown>)(params as Params<Method>);
}

function invalid(method: string, detail: string): Outcome<never> {
  const problem: Problem = { code: 'request-invalid', where: null, facts: { method: method.slice(0, 100), detail } };
  return { ok: false, problem };
}

function firstFault(error: z.ZodError): string {
  const issue = error.issues[0];
  return issue ? `${issue.path.map(String).join('.') || 'all of it'}: ${issue.message}` : '';
}
