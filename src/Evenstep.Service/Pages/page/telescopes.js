// The telescopes of the form, in millimetres or inches.
import { el, replace } from "./dom.js";
import { barrelText, numberText, say, unitText } from "./texts.js";
import { mostTelescopes } from "./fields.js";
import { bareChoice, button, checkField, choiceField, errorOf, idOf, into, removal, textField } from "./controls.js";
import { millimetres, millimetresPerInch, newTelescope, numberOf } from "./state.js";
import { add, barrelField, remove } from "./rows.js";
import { catalogueIds, catalogueTelescopes, nameOf, telescopeOf } from "./catalogue.js";

export const telescopeRows = form => [
  catalogueChoice(form),
  form.state.telescopes.map((telescope, index) => telescopeRow(form, telescope, index)),
  form.state.telescopes.length < mostTelescopes ? button(say("addTelescope"), () => add(
    form, form.state.telescopes, newTelescope(), `telescopes.${form.state.telescopes.length}.${catalogueTelescopes().length > 0 ? "id" : "apertureMm"}`,
  ), { id: idOf("addTelescope") }) : null,
];

/** Where there is one catalogue, there is no choice. */
function catalogueChoice(form) {
  const ids = [...new Set([...catalogueIds(), form.state.catalogue])];
  return ids.length > 1 && choiceField("catalogue", {
    label: say("field.catalogue"),
    value: form.state.catalogue,
    options: ids.map(id => [id, id]),
    onchange: into(form.state, "catalogue", () => {
      form.changed();
      form.loadCatalogue();
    }),
  });
}

function telescopeRow(form, telescope, index) {
  const several = form.state.telescopes.length > 1;
  const [name, legend] = [`telescopes.${index}`, say("telescopeNumber", { number: index + 1 })];
  return el("fieldset", { class: several ? "item" : "plain", id: idOf(name) },
    el("legend", { class: several ? "" : "unseen" }, legend),
    catalogueTelescopes().length > 0 && telescopeChoice(form, telescope, name),
    telescope.id === "" ? typedFields(form, telescope, name, several) : listedFields(form, telescope, name),
    errorOf(name),
    several && removal(legend, () => remove(form, form.state.telescopes, index, "addTelescope")));
}

const telescopeChoice = (form, telescope, name) => choiceField(`${name}.id`, {
  label: say("chooseTelescope"),
  value: telescope.id,
  options: [
    ["", say("typeTelescope")],
    ...(telescope.id && !telescopeOf(telescope.id) ? [[telescope.id, telescope.id]] : []),
    ...catalogueTelescopes().map(({ id }) => [id, nameOf(id)]),
  ],
  onchange: into(telescope, "id", () => form.changed(true)),
});

function listedFields(form, telescope, name) {
  const listed = telescopeOf(telescope.id);
  return [
    listed ? el("p.hint", say("telescopeFacts", {
      aperture: numberText(listed.apertureMm), focalLength: numberText(listed.focalLengthMm), ratio: ratioText(listed.focalLengthMm, listed.apertureMm),
      barrel: barrelText(listed.focuserBarrel),
    })) : null,
    checkField(`${name}.withIncluded`, {
      label: say("withIncluded"),
      hint: packedText(listed),
      value: telescope.withIncluded,
      onchange: into(telescope, "withIncluded", form.changed),
    }),
  ];
}

const packedText = listed =>
  (listed?.included?.length > 0 ? say("packed", { items: listed.included.map(one => one.name ?? nameOf(one.id ?? one)).join(", ") }) : say("packedNothing"));

function typedFields(form, telescope, name, several) {
  const facts = el("p", { class: "hint", "aria-live": "off" });
  const update = () => {
    replace(facts, factsText(telescope));
    form.changed();
  };
  replace(facts, factsText(telescope));
  return [
    lengthField(form, telescope, name, "apertureMm", "apertureUnit", update),
    lengthField(form, telescope, name, "focalLengthMm", "focalLengthUnit", update),
    facts,
    barrelField(form, telescope, `${name}.focuserBarrel`, "focuserBarrel"),
    several && textField(`${name}.name`, { label: say("field.name"), value: telescope.name, numeric: false, oninput: into(telescope, "name", form.changed) }),
  ];
}

function lengthField(form, telescope, name, length, unit, update) {
  return textField(`${name}.${length}`, {
    label: say(`field.${length}`),
    value: telescope[length],
    oninput: into(telescope, length, update),
    beside: bareChoice(`${name}.${unit}`, {
      label: say("unitOf", { what: say(`field.${length}`) }),
      value: telescope[unit],
      options: ["mm", "in"].map(one => [one, unitText(one)]),
      onchange: one => {
        convert(telescope, length, unit, one);
        form.changed(true);
      },
    }),
  });
}

function convert(telescope, length, unit, wanted) {
  const value = millimetres(telescope[length], telescope[unit]);
  if (typeof value === "number" && wanted !== telescope[unit]) {
    telescope[length] = String(Math.round((wanted === "in" ? value / millimetresPerInch : value) * 100) / 100);
  }

  telescope[unit] = wanted;
}

function factsText(telescope) {
  const aperture = millimetres(telescope.apertureMm, telescope.apertureUnit);
  const focalLength = millimetres(telescope.focalLengthMm, telescope.focalLengthUnit);
  return [
    conversionText(telescope.apertureMm, telescope.apertureUnit, aperture),
    conversionText(telescope.focalLengthMm, telescope.focalLengthUnit, focalLength),
    aperture > 0 && focalLength > 0 && ratioText(focalLength, aperture),
  ].filter(Boolean).join(" · ");
}

const ratioText = (focalLength, aperture) => `f/${numberText(focalLength / aperture, 1)}`;

function conversionText(text, unit, value) {
  const other = unit === "in" ? "mm" : "in";
  return typeof value === "number"
    ? `${numberText(numberOf(text), 2)} ${unitText(unit)} = ${numberText(other === "in" ? value / millimetresPerInch : value, 1)} ${unitText(other)}`
    : null;
}
