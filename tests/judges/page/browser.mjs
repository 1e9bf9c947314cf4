// A page of the service in a browser, and what it must never do: ask anybody else, break its policy, throw.
import assert from "node:assert/strict";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "playwright-core";

const flags = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
export const patienceMs = 120_000;
const pauseMs = 20;
export const recommendations = "/v1/recommendations";

export async function withBrowser(executablePath, use) {
  const home = mkdtempSync(join(tmpdir(), "page-"));
  const browser = await chromium.launch({ executablePath, args: flags, env: { ...process.env, HOME: home } });
  try {
    await use(browser);
  } finally {
    await browser.close();
    rmSync(home, { recursive: true, force: true });
  }
}

/** Opens the page, uses it, and sees that it kept to its own. `before` may put routes in place. */
export async function withPage({ browser, address }, { fragment = "", before, ...options }, use) {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, locale: "en-US", ...options });
  const amiss = [];
  try {
    const page = await context.newPage();
    watch(page, address, amiss);
    await page.addInitScript(() => addEventListener("securitypolicyviolation", event => console.error(`policy: ${event.violatedDirective} ${event.blockedURI}`)));
    await before?.(page);
    await page.goto(address + fragment);
    await use(page);
    assert.deepEqual(amiss, []);
  } finally {
    await context.close();
  }
}

function watch(page, address, amiss) {
  page.setDefaultTimeout(patienceMs);
  page.on("pageerror", error => amiss.push(`thrown: ${error.stack}`));
  page.on("console", message => /policy|violat|Refused/i.test(message.text()) && amiss.push(message.text()));
  page.on("request", request => {
    const { origin, protocol } = new URL(request.url());
    if (origin !== new URL(address).origin && !["blob:", "data:"].includes(protocol)) {
      amiss.push(`asked elsewhere: ${request.url()}`);
    }
  });
}

/** Waits until advice is there and nothing newer is under way. */
export const settled = async page => {
  await page.locator(".headline").waitFor();
  await page.waitForFunction(() => !document.querySelector("#advice[aria-busy]"));
};

/**
 * Changes the form and waits for the answer to it, and not to what was asked before. Whoever changes it bit by bit says which body is meant: each bit may have
 * been asked, and answered, by itself.
 */
export async function answered(page, change, path = recommendations, isMeant = () => true) {
  const [asked, answers] = [new Set(), []];
  const ask = request => isQuestion(request, path) && asked.add(request);
  const note = response => asked.has(response.request()) && answers.push(response);
  page.on("request", ask);
  page.on("response", note);
  try {
    await change();
    const response = await eventually(() => answers.find(one => isMeant(one.request().postDataJSON())), () => `the answer that is meant, among ${answers.length}`);
    await settled(page);
    return response;
  } finally {
    page.off("request", ask);
    page.off("response", note);
  }
}

/** What comes to be; how long that takes, the machine decides. */
async function eventually(find, what) {
  for (let waited = 0; waited < patienceMs; waited += pauseMs) {
    const found = find();
    if (found) {
      return found;
    }

    await new Promise(resolve => setTimeout(resolve, pauseMs));
  }

  assert.fail(`did not come: ${what()}`);
}

export const isQuestion = (request, path = recommendations) =>
  request.method() === "POST" && new URL(request.url()).pathname === path && request.headers().accept === "application/json" && !request.postDataJSON().explain?.ifUnavailable;

export const headline = page => page.locator(".headline").textContent();

/** A control by its name. */
export const control = (page, name) => page.locator(`[id="c-${name}"]`);
export const errorAt = (page, name) => page.locator(`[id="c-${name}-error"]`);
export const part = (page, name) => page.locator(`#part-${name}`);

/** What an auditor of accessibility finds against a page, whose policy lets in scripts of an isolated world of the browser. */
export async function violations(page) {
  await page.evaluate(axe);
  const found = await page.evaluate(() => axe.run());
  return found.violations.map(({ id, nodes }) => `${id}: ${nodes.map(node => node.html).slice(0, 3).join(" | ")}`);
}

/** Every file that a visit fetches, with its size; answers are none. */
export async function weightsOf(given, options, visit) {
  const sizes = [];
  const before = page => page.on("response", async response => {
    const path = new URL(response.url()).pathname;
    if (!path.startsWith("/v1/")) {
      sizes.push(response.body().then(body => [path, body.length]));
    }
  });
  await withPage(given, { before, ...options }, visit);
  return Promise.all(sizes);
}
