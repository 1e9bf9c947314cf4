// What the page asks and how it takes the answers.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { answered, control, errorAt, headline, isQuestion, part, recommendations, settled, withPage } from "./browser.mjs";

const tight = "#t=203~mm~1218~mm~2in~&b=40&f=1.6~The+widest+nebula";
const full = "#t=8~in~1218~mm~2in~&o=e~30~52~21~1.25in~~My+old+one&o=b~2~1.25in~&f=1.3~The+widest+nebula&a=52&sp=1&cy=0.75&se=1.5&b=420&n=3&zo=1&es=1.4&w=planets&w=galaxies";

const demo = JSON.parse(readFileSync(new URL("../../../src/Evenstep.Service/Catalogues/demo.json", import.meta.url), "utf8"));

/** An address that names a catalogue which is not there. */
const elsewhere = "#t=203~mm~1218~mm~2in~&b=200&c=nowhere";

export const telescope_and_items_are_chosen_from_the_catalogue = given => withPage(given, {}, async page => {
  await settled(page);
  const [telescope, item] = [demo.telescopes.find(one => one.included.length > 0), demo.items.find(one => one.kind === "eyepiece" && one.inStock !== false)];
  await answered(page, () => control(page, "telescopes.0.id").selectOption(telescope.id));
  assert.equal(await control(page, "telescopes.0.apertureMm").count(), 0);
  await page.getByText(`${telescope.apertureMm} mm aperture`).waitFor();
  const bare = await answered(page, () => control(page, "telescopes.0.withIncluded").uncheck());
  assert.deepEqual(bare.request().postDataJSON().telescopes, [{ id: telescope.id, withIncluded: false }]);
  await control(page, "owned.pick").selectOption(item.id);
  const owned = await answered(page, () => page.getByRole("button", { name: /Add what is chosen/ }).first().click());
  assert.deepEqual(owned.request().postDataJSON().owned[1], { id: item.id });
  await page.getByRole("button", { name: `Remove ${item.name}` }).waitFor();
});

export const another_catalogue_can_be_chosen = given => withPage(given, { fragment: elsewhere }, async page => {
  await errorAt(page, "catalogue").waitFor();
  assert.match(await errorAt(page, "catalogue").textContent(), /nowhere/);
  const response = await answered(page, () => control(page, "catalogue").selectOption("demo"));
  assert.deepEqual(response.request().postDataJSON().catalogue, { id: "demo" });
  await control(page, "owned.pick").waitFor();
  assert.equal(await errorAt(page, "catalogue").count(), 0);
});

export const a_shopping_list_gets_a_second_opinion = given => withPage(given, {}, async page => {
  await settled(page);
  assert.equal(await part(page, "opinion").isVisible(), false);
  const dear = demo.items.reduce((one, two) => (two.kind === "eyepiece" && two.price > one.price ? two : one));
  await page.locator("details.section summary").click();
  await control(page, "shoppingList.pick").selectOption(dear.id);
  const opinion = await answered(page, () => page.locator("section.section").last().getByRole("button", { name: /Add what is chosen/ }).click(), "/v1/second-opinions");
  assert.deepEqual(opinion.request().postDataJSON().shoppingList, [dear.id]);
  const { list } = await opinion.json();
  await part(page, "opinion").getByText("Your list costs").waitFor();
  for (const breach of list.breaches) {
    await part(page, "opinion").getByText(breach.text).first().waitFor();
  }

  assert.ok(list.breaches.length > 0);
});

/** With a path made here, so that its figures are known. */
export const the_buying_path_says_what_comes_first = given => {
  const figures = { largestStep: 2.5, meanMismatchPercent: 12, meanExcessPercent: 3, servedPercent: 61 };
  const path = {
    outcome: "optimal", currency: "EUR", totalPrice: 70, greatestLossPercent: 3.6, comparedWith: [], cautions: [], conflicts: null,
    notes: [{ code: "no-regret", text: "Wherever you stop.", values: {} }],
    steps: [
      { itemId: "a", name: "The first", price: 30, totalPriceSoFar: 30, after: figures, lossPercent: 3.6, bestForTheMoney: 2.41 },
      { itemId: "b", name: "The second", price: 40, totalPriceSoFar: 70, after: { ...figures, servedPercent: 98 }, lossPercent: 0, bestForTheMoney: 1.5 },
    ],
  };
  const before = page => page.route("**/v1/buying-paths", route => route.fulfill({ json: path }));
  return withPage(given, { before }, async page => {
    await part(page, "path").waitFor();
    assert.match(await part(page, "path").innerText(), /Wherever you stop\./);
    const steps = await part(page, "path").locator("li").allInnerTexts();
    assert.match(steps[0], /^The first €30\.00, €30\.00 so far\. Then largest step 2\.5, 61.% served\. 3\.6 % behind the best for the money \(2\.41\)\.$/);
    assert.match(steps[1], /^The second €40\.00, €70\.00 so far\..*98.% served\. Nothing better for the money\.$/);
  });
};

export const the_page_says_which_view_is_for_what = given => withPage(given, {}, async page => {
  await settled(page);
  const answer = await (await answered(page, () => control(page, "budget").fill("260"))).json();
  const { targets } = answer.telescopes[0].after;
  assert.ok(targets.length > 10);
  const shown = (await part(page, "targets").innerText()).replaceAll("\u00a0", " ");
  for (const target of targets) {
    assert.ok(shown.includes(target.name) && shown.includes(target.commonName ?? ""), target.name);
  }
});

export const what_is_seen_comes_before_what_is_bought = given => withPage(given, {}, async page => {
  await settled(page);
  const answer = await (await answered(page, () => control(page, "budget").fill("260"))).json();
  const usable = answer.telescopes[0].after.views.filter(view => view.usable);
  const rows = await page.locator(".views li").allInnerTexts();
  assert.equal(rows.length, usable.length);
  rows.forEach(row => assert.match(row.replaceAll("\n", " "), /^[\d.]+° .*× the full Moon.*exit pupil .*[\d.]+x/));
  assert.deepEqual(await page.locator(".purchases h3").allInnerTexts(), answer.purchases.map(purchase => purchase.name));
  const reasons = await page.locator(".purchases .reasons li").allInnerTexts();
  assert.deepEqual(reasons, answer.purchases.flatMap(purchase => purchase.reasons.map(reason => reason.text)));
  const [seen, bought] = await Promise.all(["views", "purchases"].map(name => part(page, name).boundingBox()));
  assert.ok(seen.y < bought.y);
});

export const advice_follows_as_one_types = given => withPage(given, {}, async page => {
  await settled(page);
  const first = await headline(page);
  await answered(page, () => control(page, "budget").fill("30"));
  assert.notEqual(await headline(page), first);
  assert.match(await headline(page), /€/);
  await page.waitForFunction(text => document.getElementById("news").textContent.startsWith(text), await headline(page));
});

/** The first answer is held back until the second has been shown. */
export const an_older_answer_never_replaces_a_newer = given => {
  let release;
  const held = new Promise(resolve => (release = resolve));
  return withPage(given, {}, async page => {
    await settled(page);
    let seen = 0;
    await page.route(`**${recommendations}`, async route => {
      const isOld = isQuestion(route.request()) && seen++ === 0;
      const answer = isOld ? await route.fetch() : null;
      await (isOld ? held.then(() => route.fulfill({ response: answer })).catch(() => {}) : route.continue());
    });
    await control(page, "budget").fill("1000");
    await page.waitForRequest(request => isQuestion(request));
    await answered(page, () => control(page, "budget").fill("0"));
    const newer = await headline(page);
    release();
    await page.waitForTimeout(400);
    assert.equal(await headline(page), newer);
    assert.match(newer, /Keep the money/);
  });
};

export const errors_are_shown_beside_their_fields = given => withPage(given, {}, async page => {
  await settled(page);
  const advice = await headline(page);
  await control(page, "add.zoom").click();
  await control(page, "add.eyepiece").click();
  await control(page, "owned.2.focalLengthMm").fill("200");
  await control(page, "owned.2.apparentFieldDeg").fill("50");
  await control(page, "owned.2.eyeReliefMm").fill("many");
  await control(page, "telescopes.0.apertureMm").fill("20");
  await errorAt(page, "telescopes.0.apertureMm").waitFor();
  assert.match(await errorAt(page, "telescopes.0.apertureMm").textContent(), /20 was given; it must be a number from 30 to 2000 mm/);
  assert.match(await errorAt(page, "owned.2.focalLengthMm").textContent(), /200 was given/);
  assert.match(await errorAt(page, "owned.2.eyeReliefMm").textContent(), /many/);
  assert.equal(await errorAt(page, "owned.0.focalLengthMm").isVisible(), false);
  const field = control(page, "telescopes.0.apertureMm");
  assert.equal(await field.getAttribute("aria-invalid"), "true");
  assert.ok((await field.getAttribute("aria-describedby")).includes("c-telescopes.0.apertureMm-error"));
  assert.equal(await headline(page), advice);
  await control(page, "age").fill("3");
  await errorAt(page, "age").waitFor();
  const [hint, error] = await Promise.all([control(page, "age-hint"), errorAt(page, "age")].map(one => one.boundingBox()));
  assert.ok(hint.y + hint.height <= error.y + 1, "the error covers the hint");
  await control(page, "age").fill("");
  await page.getByText("Please mend what is marked").first().waitFor();

  await answered(page, () => control(page, "owned.2.focalLengthMm").fill("20"));
  await answered(page, () => control(page, "owned.2.eyeReliefMm").fill("12,5"));
  const response = await answered(page, () => field.fill("200"));
  assert.equal(response.request().postDataJSON().owned[1].eyeReliefMm, 12.5);
  assert.equal(await errorAt(page, "telescopes.0.apertureMm").isVisible(), false);
  assert.equal(await field.getAttribute("aria-invalid"), null);
});

export const an_error_in_a_closed_part_opens_it = given => withPage(given, { fragment: "#t=203~mm~1218~mm~2in~&b=200&ls=9" }, async page => {
  await control(page, "owned.pick").waitFor();
  await errorAt(page, "leastStep").waitFor();
  assert.match(await errorAt(page, "leastStep").textContent(), /9 was given/);
});

export const demands_that_cannot_be_met_are_answered_with_what_would_help = given => withPage(given, { fragment: tight }, async page => {
  await settled(page);
  assert.match(await headline(page), /No purchase meets/);
  await answered(page, () => page.getByRole("button", { name: /budget of/ }).click());
  assert.match(await headline(page), /Buy/);
  assert.ok(Number(await control(page, "budget").inputValue()) > 40);
});

export const a_link_restores_the_form = given => withPage(given, { fragment: full }, async page => {
  await settled(page);
  await answered(page, () => control(page, "age").fill("53"));
  const body = await answered(page, () => control(page, "budget").fill("421"));
  const sent = body.request().postDataJSON();
  assert.deepEqual({ ...sent, explain: null, catalogue: null }, {
    telescopes: [{ apertureMm: 203.2, focalLengthMm: 1218, focuserBarrel: "2in" }],
    observer: { age: 53, wearsSpectacles: true, astigmatismDioptres: 0.75, observes: ["planets", "galaxies"] },
    site: { seeingArcsec: 1.5 },
    owned: [{ kind: "eyepiece", focalLengthMm: 30, apparentFieldDeg: 52, eyeReliefMm: 21, barrel: "1.25in", name: "My old one" }, { kind: "barlow", factors: [2], barrel: "1.25in" }],
    catalogue: null,
    limits: { budget: 421, maxPurchases: 3 },
    preferences: { enoughStep: 1.4, zooms: "allow", mustFrame: [{ widthDeg: 1.3, name: "The widest nebula" }] },
    explain: null,
  });
  await again(given, new URL(page.url()).hash, sent);
});

const again = (given, fragment, sent) => {
  let repeated;
  const before = page => page.on("request", request => (repeated ??= isQuestion(request) ? request.postDataJSON() : undefined));
  return withPage(given, { fragment, before }, async page => {
    await settled(page);
    assert.deepEqual({ ...repeated, explain: null }, { ...sent, explain: null });
  });
};

export const a_broken_link_gives_what_can_be_read = given => withPage(given, { fragment: "#t=8~yards&t=150~mm~1200~mm~2in~&o=q~1~2&o=e~20&b=333&zz=1&a=%E0%A4%A&w=fish&sp=2&p=dear&n=2" }, async page => {
  await settled(page);
  assert.equal(await control(page, "telescopes.0.apertureMm").inputValue(), "150");
  assert.equal(await control(page, "budget").inputValue(), "333");
  assert.equal(await control(page, "maxPurchases").inputValue(), "2");
  assert.equal(await control(page, "prefer").inputValue(), "comfort");
  await page.getByText("Part of this link could not be read").waitFor();
});

export const a_link_without_a_telescope_asks_for_one = given => withPage(given, { fragment: "#b=333" }, async page => {
  await errorAt(page, "telescopes.0.apertureMm").waitFor();
  assert.match(await errorAt(page, "telescopes.0.apertureMm").textContent(), /`apertureMm` is missing/);
});

export const a_link_that_cannot_be_read_gives_the_example = given => withPage(given, { fragment: "#%%%&&&===" }, async page => {
  await settled(page);
  assert.equal(await control(page, "telescopes.0.apertureMm").inputValue(), "203");
});

export const the_command_holds_the_request = given => withPage(given, {}, async page => {
  await settled(page);
  const sent = (await answered(page, () => control(page, "budget").fill("199"))).request().postDataJSON();
  await page.getByText("For developers").click();
  const command = await control(page, "curl").inputValue();
  assert.deepEqual(JSON.parse(/-d '(.*)'$/s.exec(command)[1]), sent);
  assert.ok(command.startsWith(`curl -s ${new URL(given.address).origin}${recommendations} `));
});

export const a_service_that_does_not_answer_is_reported = given => withPage(given, {}, async page => {
  await settled(page);
  await page.route(`**${recommendations}`, route => route.abort());
  await control(page, "budget").fill("90");
  await page.getByText("The service does not answer").waitFor();
  await page.unroute(`**${recommendations}`);
  await answered(page, () => control(page, "budget").fill("91"));
  assert.equal(await page.getByText("The service does not answer").isVisible(), false);
});

/** Names of a catalogue are somebody else's words. */
export const names_are_shown_as_text = given => {
  const evil = "<img src=x onerror=alert(1)>";
  const before = page => page.route(`**${recommendations}`, async route => {
    const response = await route.fetch();
    const isJson = response.headers()["content-type"].startsWith("application/json");
    const answer = isJson ? await response.json() : null;
    answer?.purchases.forEach(purchase => Object.assign(purchase, { name: evil, url: "javascript:alert(1)" }));
    await (answer ? route.fulfill({ response, json: answer }) : route.fulfill({ response }));
  });
  return withPage(given, { before }, async page => {
    await settled(page);
    assert.equal(await page.locator(".purchases h3").first().textContent(), evil);
    assert.equal(await page.locator("main img, main script, a[href^=javascript]").count(), 0);
  });
};
