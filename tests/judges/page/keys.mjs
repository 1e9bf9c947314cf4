// How the page gets a key, and what it does with it. The service at `keyed.address` wants one.
import assert from "node:assert/strict";
import { answered, control, errorAt, headline, recommendations, settled, violations, withPage } from "./browser.mjs";

const wanted = "This service answers only with a key.";

export const a_key_is_asked_for_where_the_service_wants_one = ({ browser, keyed }) => withPage({ browser, ...keyed }, {}, async page => {
  await page.getByText(wanted).first().waitFor();
  assert.equal(await page.locator(".headline").count(), 0);
  await page.waitForFunction(text => document.getElementById("news").textContent === text, wanted);
  await control(page, "key").fill("evenstep_unknown");
  await page.keyboard.press("Enter");
  await errorAt(page, "key").waitFor();
  assert.equal(await errorAt(page, "key").textContent(), "The service does not know this key.");
  assert.equal(await control(page, "key").getAttribute("aria-invalid"), "true");
  assert.equal(await page.evaluate(() => document.activeElement.id), "c-key");

  await control(page, "key").fill(` ${keyed.key}\n`);
  const response = await answered(page, () => page.getByRole("button", { name: "Use this key" }).click());
  assert.equal(response.request().headers().authorization, `Bearer ${keyed.key}`);
  assert.match(await headline(page), /Buy/);
  assert.equal(await page.locator("#key").isVisible(), false);
  assert.equal(await page.evaluate(() => document.activeElement.id), "advice");
  await control(page, "owned.pick").waitFor();
});

export const a_key_is_kept_for_the_visit_and_shown_nowhere = ({ browser, keyed }) => withPage({ browser, ...keyed }, {}, async page => {
  const asked = [];
  page.on("request", request => asked.push(request.url()));
  await open(page, keyed.key);
  await answered(page, () => control(page, "budget").fill("199"));
  await page.reload();
  await settled(page);
  await page.getByText("For developers").click();
  const [stored, command] = await Promise.all([page.evaluate(() => ({ ...localStorage })), control(page, "curl").inputValue()]);
  assert.ok(!JSON.stringify(stored).includes(keyed.key));
  assert.match(command, /-H "Authorization: Bearer \$EVENSTEP_KEY"/);
  assert.ok(![page.url(), command, await page.content(), ...asked].some(text => text.includes(keyed.key)));
});

export const a_key_can_be_forgotten = ({ browser, keyed }) => withPage({ browser, ...keyed }, {}, async page => {
  await open(page, keyed.key);
  await page.getByRole("button", { name: "Key for this service" }).click();
  await page.getByRole("button", { name: "Forget the key" }).click();
  await page.getByText(wanted).first().waitFor();
  assert.equal(await page.locator(".headline").count(), 0);
  assert.ok(!(await page.evaluate(() => JSON.stringify({ ...sessionStorage }))).includes(keyed.key));
});

export const what_was_shown_with_a_key_is_removed_when_it_is_revoked = ({ browser, keyed }) => withPage({ browser, ...keyed }, {}, async page => {
  await open(page, keyed.key);
  await page.route(`**${recommendations}`, route => route.continue({ headers: { ...route.request().headers(), authorization: "Bearer evenstep_gone" } }));
  await control(page, "budget").fill("90");
  await errorAt(page, "key").waitFor();
  assert.equal(await page.locator(".headline").count(), 0);
});

export const a_key_may_be_given_though_none_is_asked_for = given => withPage(given, {}, async page => {
  await settled(page);
  assert.equal(await page.locator("#key").isVisible(), false);
  await page.getByRole("button", { name: "Key for this service" }).click();
  await page.waitForFunction(() => document.activeElement.id === "c-key");
  const response = await answered(page, async () => {
    await page.keyboard.type("evenstep_any");
    await page.keyboard.press("Enter");
  });
  assert.equal(response.request().headers().authorization, "Bearer evenstep_any");
});

/** In German, by day and by night. */
export const the_form_for_a_key_breaks_no_rule_of_accessibility = async ({ browser, keyed }) => {
  for (const colorScheme of ["light", "dark"]) {
    await withPage({ browser, ...keyed }, { locale: "de-DE", colorScheme }, async page => {
      await page.getByText("Dieser Dienst antwortet nur mit einem Schlüssel.").first().waitFor();
      assert.deepEqual(await violations(page), []);
      await control(page, "key").fill("evenstep_unknown");
      await page.getByRole("button", { name: "Diesen Schlüssel verwenden" }).click();
      await errorAt(page, "key").waitFor();
      assert.equal(await errorAt(page, "key").textContent(), "Der Dienst kennt diesen Schlüssel nicht.");
      assert.deepEqual(await violations(page), []);
    });
  }
};

async function open(page, key) {
  await control(page, "key").fill(key);
  await answered(page, () => page.keyboard.press("Enter"));
}
