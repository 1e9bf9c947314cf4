using System.Collections.Frozen;

namespace Evenstep.Service.Contract.Languages;

/// <summary>What pictures say, in English; these sentences have no codes. Every other language has the same keys and slots.</summary>
internal static class EnglishPictures
{
    public static readonly FrozenDictionary<string, string> Sentences = new Dictionary<string, string>
    {
        ["picture/title"] = "Power ladder",
        ["picture/title-of"] = "Power ladder: {telescopes}",
        ["picture/to-buy"] = "To buy, {totalPrice:money} in all:",
        ["picture/to-buy/best-found"] = "To buy, {totalPrice:money} in all; the best that was found, not proved:",
        ["picture/nothing-worthwhile"] = "Within the limits, buying nothing is best.",
        ["picture/infeasible"] = "No set of purchases meets the wishes within the limits.",
        ["picture/what-there-is"] = "What there is",
        ["picture/with-purchases"] = "With the purchases",
        ["picture/with-list"] = "With your list",
        ["picture/with-item"] = "With this item",
        ["picture/served"] = "{percent}% served",
        ["picture/telescope"] = "{telescope:telescope}",
        ["picture/lowest/pupil"] = "The lowest useful power is {power:x}: below it light misses the eye's pupil.",
        ["picture/lowest/barrel"] = "The lowest useful power is {power:x}: the focuser's barrel sets it.",
        ["picture/lowest/request"] = "The lowest useful power is {power:x}, as asked.",
        ["picture/highest/aperture"] = "The highest is {power:x}: the aperture sets it.",
        ["picture/highest/seeing"] = "The highest is {power:x}: the air (seeing) sets it.",
        ["picture/highest/request"] = "The highest is {power:x}, as asked.",
        ["picture/brightness"] = "Brightness (exit pupil in mm) above, power below",
        ["picture/stairs"] = "Sky framed · exit pupil · power",
        ["picture/nothing-usable"] = "There is nothing usable to look through.",
        ["picture/sky"] = "{trueFieldDeg:deg}",
        ["picture/pupil"] = "{exitPupilMm:tenths} mm",
        ["picture/pupil/zoom"] = "{exitPupilMm:tenths}–{narrowestMm:tenths} mm",
        ["picture/power"] = "{power:x}",
        ["picture/power/zoom"] = "{power:whole}–{highest:x}",
        ["picture/view"] = "{trueFieldDeg:deg} of sky, exit pupil {pupil}, {power}: {through}, yours.",
        ["picture/view/new"] = "{trueFieldDeg:deg} of sky, exit pupil {pupil}, {power}: {through}, new.",
        ["picture/item/own"] = "yours: {name}",
        ["picture/item/new"] = "new: {name}",
        ["picture/item/own/through"] = "yours, {name}",
        ["picture/item/new/through"] = "new, {name}",
        ["picture/through"] = "through {barlow}",
        ["picture/through/factor"] = "through {barlow} at {factor:tenths}x",
        ["picture/nameless-eyepiece"] = "{focalLengthMm:mm} eyepiece ({id:item})",
        ["picture/nameless-zoom"] = "{shortestMm:mm} to {longestMm:mm} zoom ({id:item})",
        ["picture/nameless-barlow"] = "Barlow ({id:item})",
        ["picture/ratio"] = "{ratio:ratio}{twice}",
        ["picture/ratio/wide"] = "wide {ratio:ratio}{twice}",
        ["picture/step"] = "From {from:x} to {to:x}: ratio {ratio:ratio}, a weighed step of {weighed:ratio}.",
        ["picture/step/wide"] = "From {from:x} to {to:x}: ratio {ratio:ratio}, a weighed step of {weighed:ratio}, wider than is enough.",
        ["picture/legend/own"] = "yours",
        ["picture/legend/new"] = "new",
        ["picture/legend/zoom"] = "a zoom",
        ["picture/legend/barlow"] = "the same through a Barlow",
        ["picture/legend/served"] = "served",
        ["picture/legend/not-served"] = "not served: no view near enough",
        ["picture/legend/end"] = "at an end of the range a step counts twice",
    }.ToFrozenDictionary(StringComparer.Ordinal);
}
