// The sections of the form.
import { el, replace } from "./dom.js";
import { say, unitText } from "./texts.js";
import { fieldNamed, interests, preferences } from "./fields.js";
import { checkField, choiceField, errorOf, into, keepingFocus, textField } from "./controls.js";
import { telescopeRows } from "./telescopes.js";
import { frameRows, idPicker, leftOut, ownedRows } from "./rows.js";
import { catalogueCurrency, hasItems } from "./catalogue.js";

/** `form.changed(rebuild)` is called after every change, with true where the form has to be built anew. */
export function showForm(form) {
  keepingFocus(() => replace(
    form.root,
    form.isExample && el("p.lead", say("formLead")),
    section("telescope", telescopeRows(form)),
    section("owned", ownedRows(form)),
    section("observer", observerFields(form)),
    section("purchase", purchaseFields(form)),
    section("frame", frameRows(form)),
    moreFields(form),
    opinionFields(form),
    el("a", { class: "to-advice", href: "#advice", onclick: form.goToAdvice }, say("seeAdvice"))));
}

function observerFields(form) {
  return [
    row(form, "age", "seeingArcsec"),
    field(form, "wearsSpectacles"),
    form.state.wearsSpectacles && field(form, "astigmatismDioptres"),
    interestFields(form),
  ];
}

const interestFields = form => el("fieldset.plain",
  el("legend", say("field.observes")),
  el("div.checks", interests.map(interest => checkField(`observes.${interest}`, {
    label: say(`interest.${interest}`),
    value: form.state.observes.includes(interest),
    onchange: on => {
      form.state.observes = interests.filter(one => (one === interest ? on : form.state.observes.includes(one)));
      form.changed();
    },
  }))),
  errorOf("observes"));

const purchaseFields = form => [
  row(form, "budget", "maxPurchases"),
  field(form, "prefer"),
  row(form, "barlows", "zooms"),
  leftOut(form),
];

const moreFields = form => el("details", { class: "section", open: form.root.querySelector("details.section")?.open },
  el("summary", say("section.more")),
  row(form, "pupilMm", "leastEyeReliefMm"),
  row(form, "maxPricePerItem", "maxItemMassGrams"),
  row(form, "maxBarlows", "allowedOverlaps"),
  row(form, "enoughStep", "leastStep"),
  row(form, "leastApparentFieldDeg", "leastPower"),
  idPicker(form, "mustInclude"));

const opinionFields = form => hasItems() && section("opinion", [el("p.hint", say("opinionHint")), idPicker(form, "shoppingList")]);

function section(name, ...children) {
  const id = `section-${name}`;
  return el("section", { class: "section", "aria-labelledby": id }, el("h2", { id }, say(`section.${name}`)), children);
}

const row = (form, ...names) => el("div.row", names.map(name => field(form, name)));

function field(form, name) {
  const { kind, unit } = fieldNamed[name];
  const common = { label: say(`field.${name}`), hint: say(`hint.${name}`), value: form.state[name] };
  const set = rebuild => into(form.state, name, () => form.changed(rebuild));
  return kind === "flag" ? checkField(name, { ...common, onchange: set(name === "wearsSpectacles") })
    : kind === "choice" ? choiceField(name, { ...common, options: preferences.map(value => [value, say(`prefer.${value}`)]), onchange: set() })
    : textField(name, { ...common, unit: unit === "money" ? catalogueCurrency() : unitText(unit), oninput: set() });
}
