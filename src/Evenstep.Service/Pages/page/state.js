// What the form holds: texts as typed, so that half a number survives a change of language.
import { fields, idLists, ownedKinds } from "./fields.js";

export const millimetresPerInch = 25.4;

export const newTelescope = () =>
  ({ id: "", withIncluded: true, apertureMm: "", apertureUnit: "mm", focalLengthMm: "", focalLengthUnit: "mm", focuserBarrel: "1.25in", name: "" });

export const newOwned = kind =>
  ({ kind, ...Object.fromEntries(ownedKinds[kind].columns.map(column => [column.name, column.unit === "barrel" ? "1.25in" : ""])) });

export const newFrame = () => ({ widthDeg: "", name: "" });

export const emptyState = () => ({
  telescopes: [],
  owned: [],
  mustFrame: [],
  ...Object.fromEntries(fields.map(field => [field.name, field.initial])),
  ...Object.fromEntries(idLists.map(list => [list.name, []])),
});

export const exampleState = () => ({
  ...emptyState(),
  telescopes: [{ ...newTelescope(), apertureMm: "203", focalLengthMm: "1218", focuserBarrel: "2in" }],
  owned: [{ ...newOwned("eyepiece"), focalLengthMm: "25", apparentFieldDeg: "50", eyeReliefMm: "18" }],
  observes: ["galaxies", "planets"],
});

/** With a point or a comma. What is no number stays a text, for the service to refuse. */
export function numberOf(text) {
  const typed = text.trim().replace(",", ".");
  return typed === "" ? undefined : /^[+-]?(\d+\.?\d*|\.\d+)$/.test(typed) ? Number(typed) : text.trim();
}

export function millimetres(text, unit) {
  const value = numberOf(text);
  return typeof value === "number" && unit === "in" ? Math.round(value * millimetresPerInch * 100) / 100 : value;
}
