/**
 * How the elements ask the service that their script came from.
 */

/** Where the service is: one folder above this script. */
const service = new URL('../', import.meta.url);

/** What was answered in place of what was asked for. */
export class Refusal extends Error {}

/**
 * Asks the service.
 * @param {string} address relative to the service
 * @param {{ accept: string, language: string, key?: string, body?: object, signal: AbortSignal }} how
 * @returns {Promise<Response>} with status 200
 */
export async function ask(address, { accept, language, key, body, signal }) {
  const response = await fetch(new URL(address, service), {
    method: body ? 'POST' : 'GET',
    headers: {
      'Accept': accept, 'Accept-Language': language, ...key && { 'Authorization': `Bearer ${key}` }, ...body && { 'Content-Type': 'application/json' }
    },
    body: body ? JSON.stringify(body) : undefined,
    credentials: 'omit',
    signal,
  }).catch(unreachable);
  if (!response.ok) {
    throw new Refusal(await detailOf(response));
  }

  return response;
}

function unreachable(failure) {
  throw failure.name === 'AbortError' ? failure : new Refusal(`${service.origin} cannot be reached, or does not answer pages of ${location.origin}.`);
}

/** What an error answer says happened, with every fault that it names. */
async function detailOf(response) {
  try {
    const problem = await response.json();
    const faults = Object.entries(problem.errors ?? {}).flatMap(([place, all]) => all.map(fault => `${place}: ${fault.message}`));
    return [problem.detail, ...faults].join(' ');
  } catch {
    return `${service.origin} answered with status ${response.status}.`;
  }
}
