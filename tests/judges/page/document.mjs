// The page to try the document on, which is not ours: it must work under the policy that it is served with.
import assert from "node:assert/strict";
import { withPage } from "./browser.mjs";

export const the_page_of_the_document_works_under_its_policy = ({ browser, address }) => withPage({ browser, address: new URL("/swagger/index.html", address).href }, {}, async page => {
  const targets = page.locator(".opblock", { hasText: "/v1/targets" }).first();
  await targets.locator(".opblock-summary-control").click();
  await targets.getByRole("button", { name: "Try it out" }).click();
  await targets.getByRole("button", { name: "Execute" }).click();
  assert.equal((await targets.locator(".live-responses-table .response-col_status").last().innerText()).trim().slice(0, 3), "200");
});
