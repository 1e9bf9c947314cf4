// From the form to the question, and which control stands for which place of it.
import { fields, idLists, ownedKinds, frameColumns } from "./fields.js";
import { millimetres, numberOf } from "./state.js";

/** The body, and a map from JSON Pointer to the name of a control. */
export function recommendationOf(state) {
  const asked = { body: {}, places: new Map() };
  asked.body.telescopes = state.telescopes.map((telescope, index) => telescopeOf(telescope, index, asked.places));
  putFields(asked, state, "/observer");
  putList(asked, state, "observes");
  putFields(asked, state, "/site");
  putRows(asked, state.owned, "owned", ownedOf);
  putFields(asked, state, "/catalogue");
  putFields(asked, state, "/limits");
  putFields(asked, state, "/preferences");
  putList(asked, state, "mustInclude");
  putList(asked, state, "exclude");
  putRows(asked, state.mustFrame, "preferences/mustFrame", frameOf);
  asked.body.explain = { targets: true };
  return asked;
}

export const secondOpinionOf = (body, shoppingList) => ({ ...body, explain: { excluded: "list" }, shoppingList });

export const withBudget = (body, budget) => ({ ...body, limits: { ...body.limits, budget } });

/** The control that stands for a place, or for what it lies in. */
export function controlAt(places, pointer) {
  for (let place = pointer; place !== ""; place = place.slice(0, place.lastIndexOf("/"))) {
    if (places.has(place)) {
      return places.get(place);
    }
  }

  return undefined;
}

export const isComplete = (row, columns) => columns.every(column => !column.needed || row[column.name].trim() !== "");

export const columnsOf = row => (row.kind === "listed" ? [] : ownedKinds[row.kind].columns);

function putFields({ body, places }, state, block) {
  for (const field of fields.filter(one => one.pointer.startsWith(`${block}/`))) {
    places.set(field.pointer, field.name);
    put(body, field.pointer, field.only && !field.only(state) ? undefined : valueOf(field, state[field.name]));
  }
}

function valueOf(field, value) {
  if (value === field.initial && ["flag", "choice"].includes(field.kind)) {
    return undefined;
  }

  return field.kind === "number" ? numberOf(value) : field.kind === "flag" ? field.values[Number(value)] : value;
}

function putList({ body, places }, state, name) {
  const { pointer } = idLists.find(list => list.name === name);
  places.set(pointer, name);
  put(body, pointer, state[name].length > 0 ? [...state[name]] : undefined);
}

function putRows({ body, places }, rows, path, of) {
  const said = rows.map((row, index) => ({ ...of(row), index })).filter(row => row.complete);
  said.forEach((row, place) => row.controls.forEach(([field, control]) => places.set(`/${path}/${place}${field}`, `${path}.${row.index}${control}`)));
  put(body, `/${path}`, said.length > 0 ? said.map(row => row.value) : undefined);
}

function ownedOf(row) {
  const columns = columnsOf(row);
  return row.kind === "listed"
    ? { complete: true, value: { id: row.id }, controls: [["", ""]] }
    : { complete: isComplete(row, columns), value: { kind: row.kind, ...valuesOf(row, columns) }, controls: controlsOf(columns) };
}

const frameOf = row => ({ complete: isComplete(row, frameColumns), value: valuesOf(row, frameColumns), controls: controlsOf(frameColumns) });

const controlsOf = columns => columns.map(({ name }) => [`/${name}`, `.${name}`]);

const valuesOf = (row, columns) =>
  Object.fromEntries(columns.map(column => [column.name, columnValue(column, row[column.name])]).filter(([, value]) => value !== undefined));

function columnValue({ name, unit }, text) {
  if (unit === "text" || unit === "barrel") {
    return text.trim() || undefined;
  }

  return name === "factors" ? text.trim().split(/[\s;x×]+/).filter(Boolean).map(numberOf) : numberOf(text);
}

function telescopeOf(telescope, index, places) {
  const place = `/telescopes/${index}`;
  places.set(place, `telescopes.${index}`);
  if (telescope.id !== "") {
    return { id: telescope.id, ...(telescope.withIncluded ? {} : { withIncluded: false }) };
  }

  ["name", "apertureMm", "focalLengthMm", "focuserBarrel"].forEach(name => places.set(`${place}/${name}`, `telescopes.${index}.${name}`));
  const said = {
    name: telescope.name.trim() || undefined,
    apertureMm: millimetres(telescope.apertureMm, telescope.apertureUnit),
    focalLengthMm: millimetres(telescope.focalLengthMm, telescope.focalLengthUnit),
    focuserBarrel: telescope.focuserBarrel,
  };
  return Object.fromEntries(Object.entries(said).filter(([, value]) => value !== undefined));
}

function put(body, pointer, value) {
  if (value !== undefined) {
    const steps = pointer.split("/").slice(1);
    const last = steps.pop();
    const parent = steps.reduce((object, step) => (object[step] ??= {}), body);
    parent[last] = value;
  }
}
