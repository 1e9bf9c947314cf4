// The lists of the form.
import { el } from "./dom.js";
import { barrelText, numberText, powerText, say, unitText } from "./texts.js";
import { barrels, frameColumns, mostFrames, mostRows, ownedKinds } from "./fields.js";
import { bareChoice, button, chip, choiceField, errorOf, focusOn, idOf, into, removal, textField } from "./controls.js";
import { newFrame, newOwned } from "./state.js";
import { columnsOf, isComplete } from "./request.js";
import { hasItems, itemOptions, nameOf } from "./catalogue.js";

export const ownedRows = form => [
  el("ol.rows", form.state.owned.map((row, index) => ownedRow(form, row, index))),
  errorOf("owned"),
  form.state.owned.length < mostRows ? [
    hasItems() && picker("owned", say("addListed"), form.state.owned.filter(row => row.kind === "listed").map(row => row.id),
      id => add(form, form.state.owned, { kind: "listed", id }, "owned.pick")),
    el("div", { class: "buttons", role: "group", "aria-label": say("addTyped") },
      el("span.hint", say("addTyped")),
      ["eyepiece", "zoom", "barlow"].map(kind => button(say(`kind.${kind}`),
        () => add(form, form.state.owned, newOwned(kind), `owned.${form.state.owned.length}.${ownedKinds[kind].columns[0].name}`),
        { id: idOf(`add.${kind}`) }))),
  ] : null,
];

export const frameRows = form => [
  el("p.hint", say("frameHint")),
  el("ol.rows", form.state.mustFrame.map((row, index) =>
    typedRow(form, "preferences/mustFrame", form.state.mustFrame, row, index, frameColumns, say("frameNumber", { number: index + 1 })))),
  form.state.mustFrame.length < mostFrames && button(say("addFrame"),
    () => add(form, form.state.mustFrame, newFrame(), `preferences/mustFrame.${form.state.mustFrame.length}.widthDeg`),
    { id: idOf("add.frame") }),
];

/** What each thing owned is called, by the id that the service gives it. */
export const ownedNames = owned => owned.map((item, index) => {
  const id = item.id ?? `owned-${index + 1}`;
  const size = item.focalLengthMm ? `${numberText(item.focalLengthMm)} mm`
    : item.factors ? item.factors.map(powerText).join(", ")
    : `${numberText(item.shortestFocalLengthMm)}–${numberText(item.longestFocalLengthMm)} mm`;
  return [id, item.kind ? item.name ?? `${say(`kind.${item.kind}`)} ${size}` : nameOf(id)];
});

export function idPicker(form, name) {
  const ids = form.state[name];
  return hasItems() && el("fieldset.plain",
    el("legend", say(`field.${name}`)),
    chips(form, name),
    errorOf(name),
    picker(name, say("addListed"), ids, id => add(form, ids, id, `${name}.pick`)));
}

export const leftOut = form => (form.state.exclude.length > 0
  ? el("fieldset.plain", el("legend", say("field.exclude")), chips(form, "exclude"), errorOf("exclude"))
  : null);

const chips = (form, name) => el("ul.chips", form.state[name].map(id => chip(nameOf(id), () => {
  form.state[name] = form.state[name].filter(one => one !== id);
  form.changed(true);
  focusOn(name === "exclude" ? "budget" : `${name}.pick`);
})));

/** The button adds, not the choice: with the keyboard one walks through the choices. */
function picker(name, label, taken, onadd) {
  const choice = bareChoice(`${name}.pick`, { label, value: "", options: [["", say("choose")], ...itemOptions(taken)], onchange: () => {} });
  return el("div.pair", choice, button(say("add"), () => choice.value && onadd(choice.value), { "aria-label": say("addTo", { name: label }) }));
}

export function add(form, rows, row, next) {
  rows.push(row);
  form.changed(true);
  focusOn(next);
}

export function remove(form, rows, index, next) {
  rows.splice(index, 1);
  form.changed(true);
  focusOn(next);
}

function ownedRow(form, row, index) {
  if (row.kind !== "listed") {
    return typedRow(form, "owned", form.state.owned, row, index, columnsOf(row), say("ownedNumber", { kind: say(`kind.${row.kind}`), number: index + 1 }));
  }

  const item = chip(nameOf(row.id), () => remove(form, form.state.owned, index, "add.eyepiece"));
  item.append(errorOf(`owned.${index}`));
  return item;
}

function typedRow(form, path, rows, row, index, columns, legend) {
  const waiting = el("p", { class: "hint", hidden: isComplete(row, columns) }, say("notCounted"));
  const update = () => {
    waiting.hidden = isComplete(row, columns);
    form.changed();
  };
  return el("li", el("fieldset.item",
    el("legend", legend),
    el("div.row", columns.map(column => columnField(form, `${path}.${index}.${column.name}`, row, column, update))),
    waiting,
    errorOf(`${path}.${index}`),
    removal(legend, () => remove(form, rows, index, path === "owned" ? "add.eyepiece" : "add.frame"))));
}

const columnField = (form, name, row, column, update) => (column.unit === "barrel"
  ? barrelField(form, row, name, column.name)
  : textField(name, {
    label: say(`field.${column.name}`),
    unit: column.unit === "text" ? say("optional") : column.needed ? unitText(column.unit) : `${unitText(column.unit)}, ${say("optional")}`,
    value: row[column.name],
    numeric: column.unit !== "text",
    oninput: into(row, column.name, update),
  }));

export const barrelField = (form, row, name, column) => choiceField(name, {
  label: say(`field.${column}`),
  value: row[column],
  options: barrels.map(barrel => [barrel, barrelText(barrel)]),
  onchange: into(row, column, form.changed),
});

