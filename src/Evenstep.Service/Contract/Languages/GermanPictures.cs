using System.Collections.Frozen;

namespace Evenstep.Service.Contract.Languages;

/// <summary>The sentences of <see cref="EnglishPictures"/> in German.</summary>
internal static class GermanPictures
{
    public static readonly FrozenDictionary<string, string> Sentences = new Dictionary<string, string>
    {
        ["picture/title"] = "Vergrößerungsleiter",
        ["picture/title-of"] = "Vergrößerungsleiter: {telescopes}",
        ["picture/to-buy"] = "Zu kaufen, zusammen {totalPrice:money}:",
        ["picture/to-buy/best-found"] = "Zu kaufen, zusammen {totalPrice:money}; das Beste, was gefunden wurde, nicht bewiesen:",
        ["picture/nothing-worthwhile"] = "In diesen Grenzen ist es am besten, nichts zu kaufen.",
        ["picture/infeasible"] = "Keine Zusammenstellung erfüllt die Wünsche innerhalb der Grenzen.",
        ["picture/what-there-is"] = "Vorhanden",
        ["picture/with-purchases"] = "Mit den Käufen",
        ["picture/with-list"] = "Mit Ihrer Liste",
        ["picture/with-item"] = "Mit diesem Artikel",
        ["picture/served"] = "{percent} % versorgt",
        ["picture/telescope"] = "{telescope:telescope}",
        ["picture/lowest/pupil"] = "Die niedrigste sinnvolle Vergrößerung ist {power:x}: Darunter geht Licht an der Augenpupille vorbei.",
        ["picture/lowest/barrel"] = "Die niedrigste sinnvolle Vergrößerung ist {power:x}: Das Steckmaß des Okularauszugs bestimmt sie.",
        ["picture/lowest/request"] = "Die niedrigste sinnvolle Vergrößerung ist {power:x}, wie angegeben.",
        ["picture/highest/aperture"] = "Die höchste ist {power:x}: Die Öffnung bestimmt sie.",
        ["picture/highest/seeing"] = "Die höchste ist {power:x}: Die Luftunruhe (Seeing) bestimmt sie.",
        ["picture/highest/request"] = "Die höchste ist {power:x}, wie angegeben.",
        ["picture/brightness"] = "Oben Austrittspupille in mm, unten Vergrößerung",
        ["picture/stairs"] = "Himmelsausschnitt · Austrittspupille · Vergrößerung",
        ["picture/nothing-usable"] = "Es ist nichts da, durch das sich sinnvoll blicken ließe.",
        ["picture/sky"] = "{trueFieldDeg:deg}",
        ["picture/pupil"] = "{exitPupilMm:tenths} mm",
        ["picture/pupil/zoom"] = "{exitPupilMm:tenths}–{narrowestMm:tenths} mm",
        ["picture/power"] = "{power:x}",
        ["picture/power/zoom"] = "{power:whole}–{highest:x}",
        ["picture/view"] = "{trueFieldDeg:deg} Himmel, Austrittspupille {pupil}, {power}: {through}, eigen.",
        ["picture/view/new"] = "{trueFieldDeg:deg} Himmel, Austrittspupille {pupil}, {power}: {through}, neu.",
        ["picture/item/own"] = "eigen: {name}",
        ["picture/item/new"] = "neu: {name}",
        ["picture/item/own/through"] = "eigen, {name}",
        ["picture/item/new/through"] = "neu, {name}",
        ["picture/through"] = "mit {barlow}",
        ["picture/through/factor"] = "mit {barlow} (Faktor {factor:tenths})",
        ["picture/nameless-eyepiece"] = "Okular {focalLengthMm:mm} ({id:item})",
        ["picture/nameless-zoom"] = "Zoom {shortestMm:mm} bis {longestMm:mm} ({id:item})",
        ["picture/nameless-barlow"] = "Barlowlinse ({id:item})",
        ["picture/ratio"] = "{ratio:ratio}{twice}",
        ["picture/ratio/wide"] = "groß {ratio:ratio}{twice}",
        ["picture/step"] = "Von {from:x} bis {to:x}: Verhältnis {ratio:ratio}, gewichtete Stufe {weighed:ratio}.",
        ["picture/step/wide"] = "Von {from:x} bis {to:x}: Verhältnis {ratio:ratio}, gewichtete Stufe {weighed:ratio}, zu groß, um zu genügen.",
        ["picture/legend/own"] = "eigen",
        ["picture/legend/new"] = "neu",
        ["picture/legend/zoom"] = "ein Zoom",
        ["picture/legend/barlow"] = "dasselbe mit Barlowlinse",
        ["picture/legend/served"] = "versorgt",
        ["picture/legend/not-served"] = "nicht versorgt: nichts nahe genug",
        ["picture/legend/end"] = "am Rand zählt eine Stufe doppelt",
    }.ToFrozenDictionary(StringComparer.Ordinal);
}
