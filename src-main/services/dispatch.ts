/** From a message off the wire to a service and back; both shells call nothing else. */
import { contract, type Method, type Params, type RequestFault, type Services } from '@shared/host/index.ts';
import { problemOf, type Outcome, type Problem } from '@shared/problem/index.ts';
import { checked } from '@shared/schema/index.ts';

/** Runs `method` with `rawParams`, both unchecked. Never rejects. */
export async function dispatch(services: Services, method: string, rawParams: unknown): Promise<Outcome<unknown>> {
  if (!isMethod(method)) return invalid(method, 'unknown');
  const params = checked(contract[method].params, rawParams);
  if (!params.ok) return invalid(method, params.wrong);
  try {
    const answer: unknown = await run(services, method, params.value);
    const result = checked(contract[method].result, answer);
    return result.ok ? result : invalid(method, result.wrong);
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

function invalid(method: string, wrong: RequestFault): Outcome<never> {
  const problem: Problem = { code: 'request-invalid', where: null, facts: { method: method.slice(0, 100), wrong } };
  return { ok: false, problem };
}
