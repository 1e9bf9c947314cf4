// Until the catalogue is here, and where there is none, things are called by their ids.
import { ask } from "./service.js";

let known = { ids: [], items: [], telescopes: [], currency: "", names: new Map() };
const others = new Map();

export async function loadCatalogue(id) {
  const [list, { json }] = await Promise.all([ask("/v1/catalogues?limit=100"), ask(`/v1/catalogues/${encodeURIComponent(id)}`)]);
  known = {
    ids: (list.json?.catalogues ?? []).map(one => one.id),
    items: json?.items ?? [],
    telescopes: json?.telescopes ?? [],
    currency: json?.currency ?? "",
    names: new Map(),
  };
  [...known.items, ...known.telescopes].forEach(({ id: own, name }) => known.names.set(own, name ?? own));
}

export const catalogueTelescopes = () => known.telescopes;
export const telescopeOf = id => known.telescopes.find(telescope => telescope.id === id);
export const catalogueIds = () => known.ids;
export const hasItems = () => known.items.length > 0;
export const catalogueCurrency = () => known.currency;

/** Names that only an answer or the form knows; the catalogue's own go first. */
export const rememberName = (id, name) => name && others.set(id, name);
export const nameOf = id => known.names.get(id) ?? others.get(id) ?? id;

export function itemOptions(without) {
  const groups = new Map();
  known.items.filter(item => !without.includes(item.id)).forEach(item => {
    const line = item.line ?? "–";
    groups.set(line, [...(groups.get(line) ?? []), [item.id, item.name ?? item.id]]);
  });
  return [...groups].map(([label, options]) => ({ label, options }));
}
