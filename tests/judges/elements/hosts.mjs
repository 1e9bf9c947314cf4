// The elements in pages of others.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createServer } from "node:http";
import { createRequire } from "node:module";
import { withPage } from "../page/browser.mjs";

const sample = "elements/sample.html";
const sampleLadder = "evenstep-ladder:not(.other)";
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

export const The_sample_shows_every_element = given => onSample(given, {}, async page => {
  assert.equal(await page.locator("svg").count(), 3);
  assert.ok(await page.locator("evenstep-advice li").count() > 0);
  assert.match(await insideOf(page, "evenstep-advice"), /Recommended for Capstan 152[^]*(€|EUR)[^]*Never look at the Sun/);
  assert.match(await insideOf(page, "evenstep-ladder.other"), /Vergrößerungsleiter/);
  assert.match(await insideOf(page, sampleLadder), /Capstan 152/);
});

/** The policy of the sample lets no script in, so the auditor runs in an isolated world of the browser, with the policy in force. */
export const The_elements_break_no_rule_of_accessibility = async given => {
  for (const colorScheme of ["light", "dark"]) {
    await onSample(given, { colorScheme }, async page => {
      const client = await page.context().newCDPSession(page);
      const { frameTree } = await client.send("Page.getFrameTree");
      const { executionContextId } = await client.send("Page.createIsolatedWorld", { frameId: frameTree.frame.id });
      await client.send("Runtime.evaluate", { contextId: executionContextId, expression: axe });
      const { result } = await client.send("Runtime.evaluate", { contextId: executionContextId, awaitPromise: true, returnByValue: true, expression: "axe.run().then(found => found.violations.map(one => `${one.id}: ${one.nodes[0].html}`))" });
      assert.deepEqual(result.value, [], colorScheme);
    });
  }
};

export const A_change_of_several_attributes_makes_one_request = given => onSample(given, {}, async page => {
  const asked = [];
  page.on("request", request => asked.push(request.postDataJSON()));
  await page.locator(sampleLadder).evaluate(element => {
    element.setAttribute("owned", "kelpstone-5-5 kelpstone-22-8");
    element.setAttribute("age", "70");
  });
  await page.waitForFunction(() => document.querySelectorAll("#told").length && document.querySelector("#told").textContent.split("evenstep-ladder: ready").length === 4);
  assert.deepEqual(asked.map(({ owned, observer }) => [owned.length, observer.age]), [[2, 70]]);
});

export const A_refusal_says_what_to_change = given => onSample(given, {}, async page => {
  await page.locator(sampleLadder).evaluate(element => element.setAttribute("age", "-1"));
  await page.locator(`${sampleLadder} [role=alert]`).waitFor();
  assert.match(await page.locator(`${sampleLadder} [role=alert]`).textContent(), /\/observer\/age: -1 was given; it must be a number from 5 to 110/);
});

export const Colours_can_be_set_by_the_page = given => onSample(given, { colorScheme: "light" }, async page => {
  const paper = () => page.evaluate(name => getComputedStyle(document.querySelector(name).shadowRoot.querySelector(".evenstep-paper")).fill, "evenstep-ladder.other");
  assert.equal(await paper(), "rgb(16, 20, 38)");
});

/** What a picture reads and writes stays text. */
export const Names_are_shown_as_text = given => onSample(given, {}, async page => {
  const name = "<img src=x onerror=alert(1)> & ]]> \"quoted\"";
  await page.locator(sampleLadder).evaluate((element, name) => { element.request = { telescopes: [{ name, apertureMm: 100, focalLengthMm: 900, focuserBarrel: "1.25in" }] }; }, name);
  await page.waitForFunction(selector => document.querySelector(selector).shadowRoot.querySelector("desc")?.textContent.includes("onerror"), sampleLadder);
  assert.ok((await page.locator(`${sampleLadder} svg > title`).textContent()).includes(name));
  assert.equal(await page.locator(`${sampleLadder} img`).count(), 0);
});

/** Of what a strict policy may allow, the elements need this service for scripts and for answers, and nothing else. */
export const A_page_of_another_origin_shows_the_elements = ({ browser, address }) => onShop(browser, address, { port: 0, key: "" }, async (page, amiss) => {
  await page.locator("evenstep-ladder svg").waitFor();
  await page.locator("evenstep-advice [part=heading]").waitFor();
  assert.match(await insideOf(page, "evenstep-advice"), /Empfohlen für Capstan 152/);
  assert.deepEqual(amiss, []);
});

/** The service at `keyed.address` knows a key for pages of this machine's `keyed.port`, and asks everybody for one. */
export const A_page_with_a_key_for_its_origin_shows_the_elements = ({ browser, keyed }) => onShop(browser, keyed.address, keyed, async (page, amiss) => {
  await page.locator("evenstep-ladder svg").waitFor();
  await page.locator("evenstep-advice svg").waitFor();
  assert.match(await insideOf(page, "evenstep-advice"), /Empfohlen für Capstan 152/);
  assert.deepEqual(amiss, []);
  await page.locator("evenstep-ladder").evaluate(element => element.setAttribute("browser-key", "evenstep_unknown"));
  await page.locator("evenstep-ladder [role=alert]").waitFor();
  assert.match(await insideOf(page, "evenstep-ladder"), /ist hier nicht bekannt/);
});

export const A_page_of_an_origin_that_is_not_the_keys_is_told_so = ({ browser, keyed }) => onShop(browser, keyed.address, { ...keyed, port: 0 }, async page => {
  await page.locator("evenstep-ladder [role=alert]").waitFor();
  assert.match(await insideOf(page, "evenstep-ladder"), /does not answer pages of http:\/\/127\.0\.0\.1/);
});

async function onShop(browser, address, { port, key }, use) {
  const service = new URL(address).origin;
  const policy = `default-src 'none'; script-src ${service}; connect-src ${service}; require-trusted-types-for 'script'; trusted-types 'none'`;
  const markup = `<!doctype html><html lang="de"><title>Ein Laden</title>
    <script type="module" src="${service}/elements/ladder.js"></script><script type="module" src="${service}/elements/advice.js"></script>
    <evenstep-ladder browser-key="${key}" aperture-mm="150" focal-length-mm="750" focuser-barrel="1.25in" catalogue="demo" owned="kelpstone-5-5"></evenstep-ladder>
    <evenstep-advice browser-key="${key}" catalogue="demo" telescope="capstan-152" wears-spectacles ladder></evenstep-advice>`;
  const shop = createServer((_, response) => response.writeHead(200, { "Content-Type": "text/html; charset=utf-8", "Content-Security-Policy": policy }).end(markup));
  await new Promise(ready => shop.listen(port, "127.0.0.1", ready));
  const page = await browser.newPage();
  try {
    const amiss = [];
    page.on("console", message => /policy|CORS/i.test(message.text()) && amiss.push(message.text()));
    await page.goto(`http://127.0.0.1:${shop.address().port}/`);
    await use(page, amiss);
  } finally {
    await page.close();
    shop.close();
  }
}

/** A shop's data may name a script as an item's page. */
export const Only_an_address_of_the_web_becomes_a_link = given => onSample(given, { before: page => page.route(/recommendation\?/, withLinks) }, async page => {
  const links = await page.locator("evenstep-advice li").evaluateAll(items => items.map(item => item.querySelector("a")?.href ?? null));
  assert.deepEqual(links.slice(0, 2), ["https://shop.example/a", null]);
});

async function withLinks(route) {
  const response = await route.fetch();
  if (!response.headers()["content-type"].startsWith("application/json")) {
    return route.fulfill({ response });
  }

  const advice = await response.json();
  const addresses = ["https://shop.example/a", "javascript:alert(1)"];
  advice.purchases.forEach((purchase, i) => { purchase.url = addresses[i] ?? null; });
  return route.fulfill({ response, json: advice });
}

async function onSample(given, options, use) {
  await withPage({ ...given, address: new URL(sample, given.address).href }, options, async page => {
    await page.waitForFunction(() => document.querySelector("#told").textContent.split(";").length === 4);
    assert.doesNotMatch(await page.locator("#told").textContent(), /failed/);
    await use(page);
  });
}

const insideOf = (page, selector) => page.evaluate(name => document.querySelector(name).shadowRoot.textContent, selector);
