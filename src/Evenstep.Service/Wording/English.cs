using System.Collections.Frozen;

namespace Evenstep.Service.Wording;

/// <summary>
/// Every sentence a shopper could read, in English, by the code it goes with. In braces stand the values by name, with
/// how they are written: x for a power, factor, deg, mm, g, money, barrel, and telescope or item for a name that may be made up.
/// Every other language has the same keys, and in each sentence the same slots.
/// </summary>
internal static class English
{
    public static readonly FrozenDictionary<string, string> Sentences = new Dictionary<string, string>
    {
        // Why an item is in the plan.
        ["reason/asked-for"] = "You asked for it.",
        ["reason/reticle"] = "It gives the reticle you asked for: {power:x}, with {leastPower:x} wanted.",
        ["reason/frames"] = "Without it nothing would show {widthDeg:deg} at once, as you asked; with it the widest view shows {trueFieldDeg:deg}.",
        ["reason/frames/named"] = "Without it nothing would show {name} ({widthDeg:deg}) at once; with it the widest view shows {trueFieldDeg:deg}.",
        ["reason/grants-wide-view"] = "It gives the wide view that large nebulae call for: {trueFieldDeg:deg}.",
        ["reason/reaches-low-end"] = "Reaches down to {power:x}; without it there would be nothing below {to:x}, and the lowest power of use is {from:x}.",
        ["reason/reaches-high-end"] = "Reaches up to {power:x}; without it there would be nothing above {from:x}, and the highest power of use is {to:x}.",
        ["reason/fills-step"] = "Fills the jump from {from:x} to {to:x} with {power:x}.",
        ["reason/barlow-adds"] = "Turns eyepieces into further powers: {powers:x}.",
        ["reason/evens-steps"] = "Together with the other purchases it makes the steps more even.",
        ["reason/in-telescope"] = "{telescope:telescope}: {sentence}",

        // Warnings.
        ["caution/sun"] = "Never look at the Sun through a telescope without a proper filter over its front. Cap or take off the finder, and watch children: a moment is enough to blind an eye.",
        ["caution/eyesight"] = "Where spectacles may come off is a rule of thumb about optics, not a measurement of your eyes. Questions of eyesight belong to an eye-care professional.",
        ["caution/exit-pupil-narrow"] = "At {power:x} the exit pupil is only {exitPupilMm:mm}, less than {leastMm:mm}: the image is dim, and specks in the eye show.",
        ["caution/exit-pupil-wide"] = "At {power:x} the exit pupil is {exitPupilMm:mm}, wider than the eye's {pupilMm:mm}: some of the light does not enter the eye.",

        // What else is worth knowing.
        ["note/wide-view-not-granted"] = "Large nebulae call for a view of {trueFieldDeg:deg}, but no set of purchases within these limits gives one.",
        ["note/range-set-by-barrel"] = "{telescope:telescope}: the eye could use less than {lowest:x}, but no practical eyepiece for this focuser goes lower.",
        ["note/best-found"] = "This is the best that was found within the work limit; it is not proved that nothing is better.",
        ["note/alternative-not-found"] = "What to buy if {name} cannot be had was not found within the work limit.",
        ["note/suggested-point/knee"] = "For {totalPrice:money} the largest step is {largestStep:factor}. Beyond that, money buys less.",
        ["note/suggested-point/last"] = "For {totalPrice:money} the largest step is {largestStep:factor}. More money, up to the budget, would not make it noticeably narrower.",
        ["note/curve-proved-up-to"] = "Up to {provedUpTo:money} nothing better can be had; beyond that these are the best sets that were found within the work limit.",
        ["note/curve-not-proved"] = "These are the best sets that were found within the work limit; it is not proved that nothing is better.",
        ["note/larger-budget-helps"] = "A budget of {budget:money} alone would make it possible.",
        ["note/other-max-purchases-helps"] = "Raising the number of purchases allowed to {maxPurchases} alone would make it possible.",
        ["note/other-max-barlows-helps"] = "Raising the number of Barlows allowed to {maxBarlows} alone would make it possible.",
        ["note/more-overlaps-help"] = "Raising the number of overlaps allowed to {allowedOverlaps} alone would make it possible.",
        ["note/narrower-frame-helps"] = "Asking for a view of {widthDeg:deg} instead of {askedDeg:deg} alone would make it possible.",
        ["note/no-single-change-helps"] = "Changing one limit alone would not make it possible; take back one of the demands named, or change several limits.",

        // Demands that cannot be met together.
        ["conflict/must-include"] = "{name} cannot be bought within these limits{together}.",
        ["conflict/must-frame"] = "A view of {widthDeg:deg} cannot be had within these limits{together}.",
        ["conflict/must-frame/named"] = "A view of {widthDeg:deg}, for {name}, cannot be had within these limits{together}.",
        ["conflict/reticle"] = "A reticle eyepiece that gives {leastPower:x} cannot be had within these limits{together}.",
        ["conflict/together"] = " together with the other demands named here",
        ["conflict/alone"] = "",
        ["conflict/no-candidate"] = "{name} must be bought, but may not be: {sentence} Change that, or take it out of `mustInclude`.",

        // Rules that a shopping list breaks.
        ["breach/budget"] = "The list costs {totalPrice:money}, more than the budget of {budget:money}.",
        ["breach/max-purchases"] = "Items on the list: {purchases}; at most {maxPurchases} may be bought.",
        ["breach/max-barlows"] = "Barlows on the list: {barlows}; at most {maxBarlows} may be bought.",
        ["breach/reticles"] = "Reticle eyepieces on the list: {reticles}; one is enough.",
        ["breach/overlap"] = "{firstView} and {secondView} repeat one another in {telescope:telescope} (repetitions: {overlaps}, allowed: {allowedOverlaps}).",
        ["breach/must-include"] = "{name} was to be bought, and is not on the list.",
        ["breach/must-frame"] = "With the list nothing would show {widthDeg:deg} at once{widest}.",
        ["breach/must-frame/named"] = "With the list nothing would show {name} ({widthDeg:deg}) at once{widest}.",
        ["breach/reticle"] = "With the list there would be no reticle eyepiece; one that gives {leastPower:x} is asked for.",
        ["breach/reticle/weak"] = "With the list a reticle eyepiece would reach {power:x}; {leastPower:x} is asked for.",
        ["breach/in-telescope"] = "{telescope:telescope}: {sentence}",
        ["breach/view"] = "{eyepiece:item} ({power:x})",
        ["breach/view/zoom"] = "{eyepiece:item} ({power:x} to {powerAtShortest:x})",
        ["breach/view-through"] = "{eyepiece:item} through {barlow:item} at {factor:factor}x ({power:x})",
        ["breach/view-through/zoom"] = "{eyepiece:item} through {barlow:item} at {factor:factor}x ({power:x} to {powerAtShortest:x})",
        ["breach/widest"] = "; the widest true field is {trueFieldDeg:deg}",
        ["breach/no-view"] = "",

        // Why an item of the catalogue is no candidate.
        ["exclusion/excluded-by-request"] = "The request excludes it.",
        ["exclusion/excluded-by-request/barlow"] = "The request avoids Barlows.",
        ["exclusion/excluded-by-request/zoom"] = "The request avoids zooms.",
        ["exclusion/out-of-stock"] = "It is not in stock.",
        ["exclusion/reticle"] = "It is a reticle eyepiece, and none is asked for.",
        ["exclusion/reticle/owned"] = "It is a reticle eyepiece, and one that serves is owned already.",
        ["exclusion/over-budget"] = "It costs {price:money}, more than the budget of {limit:money}.",
        ["exclusion/over-budget/item"] = "It costs {price:money}, more than the {limit:money} allowed for one item.",
        ["exclusion/too-heavy"] = "It weighs {massGrams:g}, more than the {limit:g} allowed.",
        ["exclusion/barrel-too-wide"] = "Its {barrel:barrel} barrel fits no focuser here.",
        ["exclusion/outside-power-range"] = "It gives {power:x} in {telescope:telescope}, outside the powers of use there, {lowest:x} to {highest:x}.",
        ["exclusion/outside-power-range/zoom"] = "It gives {power:x} to {powerAtShortest:x} in {telescope:telescope}, outside the powers of use there, {lowest:x} to {highest:x}.",
        ["exclusion/outside-power-range/reticle"] = "Neither alone nor through a Barlow does it give the {leastPower:x} asked for.",
        ["exclusion/eye-relief-too-short"] = "Its eye relief is {eyeReliefMm:mm}; {neededMm:mm} is needed.",
        ["exclusion/apparent-field-too-narrow"] = "Its apparent field is {apparentFieldDeg:deg}; {leastDeg:deg} is asked for.",
        ["exclusion/overlaps-owned"] = "It repeats powers that what is owned gives already.",
        ["exclusion/overlaps-owned/itself"] = "It is owned already.",

        // What a catalogue is warned of.
        ["warning/unknown-column"] = "The column {column} is not known, and is left out. To keep what it holds, call it attributes.{column}.",
        ["warning/unknown-column/nearest"] = "The column {column} is not known, and is left out. Did you mean {nearest}?",
        ["warning/unknown-column/nameless"] = "Column {number} has no name, and is left out.",
        ["warning/field-stop-wider-than-barrel"] = "A field stop of {fieldStopMm:mm} does not fit into a {barrel:barrel} barrel, which lets through some {mostMm:mm}.",
        ["warning/apparent-field-wider-than-barrel"] = "{apparentFieldDeg:deg} at {focalLengthMm:mm} need a field stop of {neededMm:mm}; a {barrel:barrel} barrel lets through some {mostMm:mm}.",
        ["warning/field-stop-contradicts-apparent-field"] = "A field stop of {fieldStopMm:mm} gives some {impliedDeg:deg} at this focal length, not {apparentFieldDeg:deg}.",
        ["warning/zoom-fields-swapped"] = "The apparent field is wider at the longest focal length than at the shortest; in a zoom it is the other way round.",
        ["warning/price-of-zero"] = "The price is 0, so it will be recommended as a gift.",
        ["warning/alike-items"] = "It is like the item {other} in all but the id.",
        ["warning/same-gtin"] = "The item {other} has the same global trade item number.",
        ["warning/unknown-currency"] = "{currency} is no currency of ISO 4217.",
        ["warning/focal-ratio-too-fast"] = "A focal length of less than twice the aperture: are the two swapped?",
        // What targets are commonly called.
        ["target/veil"] = "Veil Nebula, the whole loop",
        ["target/ngc-7000"] = "North America Nebula",
        ["target/m-8"] = "Lagoon Nebula",
        ["target/ngc-2237"] = "Rosette Nebula",
        ["target/m-42"] = "Orion Nebula",
        ["target/ngc-6992"] = "Eastern Veil",
        ["target/m-17"] = "Omega Nebula",
        ["target/m-20"] = "Trifid Nebula",
        ["target/ngc-7293"] = "Helix Nebula",
        ["target/m-45"] = "Pleiades",
        ["target/m-44"] = "Beehive Cluster",
        ["target/double-cluster"] = "Double Cluster",
        ["target/m-11"] = "Wild Duck Cluster",
        ["target/m-31"] = "Andromeda Galaxy",
        ["target/m-33"] = "Triangulum Galaxy",
        ["target/m-101"] = "Pinwheel Galaxy",
        ["target/ngc-253"] = "Sculptor Galaxy",
        ["target/ngc-4565"] = "Needle Galaxy",
        ["target/m-51"] = "Whirlpool Galaxy",
        ["target/m-64"] = "Black Eye Galaxy",
        ["target/m-104"] = "Sombrero Galaxy",
        ["target/ngc-104"] = "47 Tucanae",
        ["target/ngc-5139"] = "Omega Centauri",
        ["target/m-13"] = "Hercules Cluster",
        ["target/m-27"] = "Dumbbell Nebula",
        ["target/m-97"] = "Owl Nebula",
        ["target/m-57"] = "Ring Nebula",
        ["target/ngc-6543"] = "Cat's Eye Nebula",
        ["target/ngc-7009"] = "Saturn Nebula",
        ["target/ngc-7662"] = "Blue Snowball",
        ["target/moon"] = "Moon",
        ["target/jupiter"] = "Jupiter",
        ["target/saturn"] = "Saturn",
        ["target/mars"] = "Mars",
        ["target/epsilon-lyrae"] = "Double Double",

        // Where what is known of targets comes from.
        ["source/d3-celestial"] = "The data of d3-celestial: a size as it is customary for looking.",
        ["source/open-ngc"] = "The OpenNGC database: the longer axis.",
        ["source/mean-of-range"] = "The middle between the least and the greatest diameter that it shows from the Earth.",
        ["source/common-practice"] = "Common practice, no source.",
        ["source/wanted-exit-pupils"] = "Wanted exit pupils go by the kind of target: common practice, no source.",
    }.ToFrozenDictionary(StringComparer.Ordinal);
}
