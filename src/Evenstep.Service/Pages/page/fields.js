// What can be asked, in the service's names: form, link and request are all made from these tables.

export const barrels = ["0.965in", "1.25in", "2in"];
export const interests = ["large-nebulae", "galaxies", "star-clusters", "planetary-nebulae", "moon", "planets", "double-stars"];
export const preferences = ["comfort", "low-price", "wide-field", "long-eye-relief", "light-weight", "parfocal"];

const number = (name, link, block, unit, initial = "") => ({ name, link, pointer: `/${block}/${name}`, kind: "number", unit, initial });
const flag = (name, link, pointer, initial, values = [false, true]) => ({ name, link, pointer, kind: "flag", initial, values });

/** Single fields: name, key in the link, place in the request. */
export const fields = [
  { name: "catalogue", link: "c", pointer: "/catalogue/id", kind: "text", initial: "demo" },
  number("age", "a", "observer", "years"),
  flag("wearsSpectacles", "sp", "/observer/wearsSpectacles", false),
  { ...number("astigmatismDioptres", "cy", "observer", "dioptres"), only: state => state.wearsSpectacles },
  number("pupilMm", "pu", "observer", "mm"),
  number("leastEyeReliefMm", "er", "observer", "mm"),
  number("seeingArcsec", "se", "site", "arcsec"),
  number("budget", "b", "limits", "money", "250"),
  number("maxPurchases", "n", "limits", "", "3"),
  number("maxBarlows", "nb", "limits", ""),
  number("maxPricePerItem", "ip", "limits", "money"),
  number("maxItemMassGrams", "im", "limits", "g"),
  number("allowedOverlaps", "ov", "limits", ""),
  { name: "prefer", link: "p", pointer: "/preferences/prefer", kind: "choice", initial: preferences[0], values: preferences },
  number("leastStep", "ls", "preferences", ""),
  number("enoughStep", "es", "preferences", ""),
  number("leastApparentFieldDeg", "af", "preferences", "deg"),
  flag("barlows", "ba", "/preferences/barlows", true, ["avoid", "allow"]),
  flag("zooms", "zo", "/preferences/zooms", false, ["avoid", "allow"]),
  number("leastPower", "re", "preferences/reticle", "x"),
];

export const fieldNamed = Object.fromEntries(fields.map(field => [field.name, field]));

export const idLists = [
  { name: "observes", link: "w", pointer: "/observer/observes", known: interests },
  { name: "mustInclude", link: "i", pointer: "/preferences/mustInclude" },
  { name: "exclude", link: "x", pointer: "/preferences/exclude" },
  { name: "shoppingList", link: "s", pointer: "/shoppingList" },
];

const column = (name, unit, needed = true) => ({ name, unit, needed });
const barrel = column("barrel", "barrel");
const label = column("name", "text", false);

/** What may be typed in as owned: columns in the order of the link. */
export const ownedKinds = {
  eyepiece: {
    link: "e",
    columns: [
      column("focalLengthMm", "mm"), column("apparentFieldDeg", "deg", false), column("eyeReliefMm", "mm", false), barrel,
      column("fieldStopMm", "mm", false), label,
    ],
  },
  zoom: {
    link: "z",
    columns: [
      column("shortestFocalLengthMm", "mm"), column("longestFocalLengthMm", "mm"), column("apparentFieldAtShortestDeg", "deg"),
      column("apparentFieldAtLongestDeg", "deg"), column("eyeReliefMm", "mm"), barrel, label,
    ],
  },
  barlow: { link: "b", columns: [column("factors", "x"), barrel, label] },
};

export const telescopeColumns = [
  column("apertureMm", "mm"), column("apertureUnit", "length"), column("focalLengthMm", "mm"),
  column("focalLengthUnit", "length"), column("focuserBarrel", "barrel"), label,
];

export const frameColumns = [column("widthDeg", "deg"), label];

export const mostTelescopes = 4;
export const mostRows = 100;
export const mostFrames = 20;
