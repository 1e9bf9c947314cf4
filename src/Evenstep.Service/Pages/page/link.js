// The form in the address, after the #: what differs from an empty form. Half a link gives half a form.
import { barrels, fields, frameColumns, idLists, mostFrames, mostRows, mostTelescopes, ownedKinds, telescopeColumns } from "./fields.js";
import { emptyState, newFrame, newOwned, newTelescope, numberOf } from "./state.js";

const longest = 200;
const between = "~";
const listed = "id";
const bare = "bare";
const known = { barrel: barrels, length: ["mm", "in"] };

export function linkOf(state) {
  const link = new URLSearchParams();
  const empty = emptyState();
  const add = (key, ...values) => link.append(key, values.join(between));
  state.telescopes.forEach(row => (row.id ? add("t", row.withIncluded ? listed : bare, row.id) : add("t", ...texts(row, telescopeColumns))));
  state.owned.forEach(
    row => (row.kind === "listed" ? add("o", listed, row.id) : add("o", ownedKinds[row.kind].link, ...texts(row, ownedKinds[row.kind].columns))));
  state.mustFrame.forEach(row => add("f", ...texts(row, frameColumns)));
  fields.filter(({ name }) => state[name] !== empty[name])
    .forEach(({ name, kind, link: key }) => add(key, kind === "flag" ? Number(state[name]) : state[name]));
  idLists.forEach(({ name, link: key }) => state[name].forEach(id => add(key, id)));
  return link.toString();
}

export function readLink(text) {
  const state = emptyState();
  const pairs = [...new URLSearchParams(text.replace(/^#/, ""))];
  const taken = pairs.filter(([key, value]) => value.length <= longest && take(state, key, value)).length;
  if (state.telescopes.length === 0) {
    state.telescopes.push(newTelescope());
  }

  return taken === 0 ? null : { state, strange: taken < pairs.length };
}

const texts = (row, columns) => columns.map(({ name }) => row[name]);

function take(state, key, value) {
  const field = fields.find(({ link }) => link === key);
  const list = idLists.find(({ link }) => link === key);
  const [first, ...rest] = value.split(between);
  const id = rest.join(between);
  return field ? takeField(state, field, value)
    : list ? takeId(state[list.name], list, value)
    : key === "t" ? push(
      state.telescopes, mostTelescopes,
      [listed, bare].includes(first)
        ? id && { ...newTelescope(), id, withIncluded: first === listed }
        : rowFrom(newTelescope(), telescopeColumns, [first, ...rest]))
    : key === "o" ? push(state.owned, mostRows, first === listed ? id && { kind: "listed", id } : ownedFrom(first, rest))
    : key === "f" && push(state.mustFrame, mostFrames, rowFrom(newFrame(), frameColumns, [first, ...rest]));
}

function takeField(state, { name, kind, values }, value) {
  const read = kind === "flag" ? [false, true][value] : value;
  const fits = kind === "number" ? typeof numberOf(value) !== "string" : kind === "choice" ? values.includes(value) : read !== undefined;
  state[name] = fits ? read : state[name];
  return fits;
}

const takeId = (ids, { known: allowed }, id) => id !== "" && (allowed?.includes(id) ?? true) && push(ids, mostRows, !ids.includes(id) && id);

const push = (rows, most, row) => Boolean(row) && rows.length < most && rows.push(row) > 0;

function ownedFrom(mark, values) {
  const kind = Object.keys(ownedKinds).find(one => ownedKinds[one].link === mark);
  return kind && rowFrom(newOwned(kind), ownedKinds[kind].columns, values);
}

/** The last column is a name, which may hold whatever separates the others. */
function rowFrom(row, columns, values) {
  const last = columns.length - 1;
  const read = [...values.slice(0, last), values.slice(last).join(between)];
  const fits = read.length === columns.length && columns.every(({ unit }, index) => known[unit]?.includes(read[index]) ?? true);
  return fits && Object.assign(row, Object.fromEntries(columns.map(({ name }, index) => [name, read[index]])));
}
