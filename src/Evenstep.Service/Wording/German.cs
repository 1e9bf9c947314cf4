using System.Collections.Frozen;

namespace Evenstep.Service.Wording;

/// <summary>The sentences of <see cref="English"/> in German, as an adviser speaks to a customer. A power is written "81-fach", and may take an ending.</summary>
internal static class German
{
    public static readonly FrozenDictionary<string, string> Sentences = new Dictionary<string, string>
    {
        // Why an item is in the plan.
        ["reason/asked-for"] = "Das haben Sie sich ausdrücklich gewünscht.",
        ["reason/reticle"] = "Bietet das gewünschte Fadenkreuz bei {power:x}er Vergrößerung; gewünscht war mindestens {leastPower:x}e.",
        ["reason/frames"] = "Ohne dieses Teil passten {widthDeg:deg} nirgends auf einmal ins Gesichtsfeld, wie Sie es wünschen; damit beträgt das größte wahre Gesichtsfeld {trueFieldDeg:deg}.",
        ["reason/frames/named"] = "Ohne dieses Teil passte „{name}“ ({widthDeg:deg}) nirgends ganz ins Gesichtsfeld; damit beträgt das größte wahre Gesichtsfeld {trueFieldDeg:deg}.",
        ["reason/grants-wide-view"] = "Gibt den weiten Überblick, den große Nebel verlangen: {trueFieldDeg:deg} wahres Gesichtsfeld.",
        ["reason/reaches-low-end"] = "Reicht hinunter bis {power:x}; ohne dieses Teil gäbe es nichts unter {to:x}, und die niedrigste sinnvolle Vergrößerung ist {from:x}.",
        ["reason/reaches-high-end"] = "Reicht hinauf bis {power:x}; ohne dieses Teil gäbe es nichts über {from:x}, und die höchste sinnvolle Vergrößerung ist {to:x}.",
        ["reason/fills-step"] = "Schließt die Lücke zwischen {from:x} und {to:x} mit {power:x}er Vergrößerung.",
        ["reason/barlow-adds"] = "Macht aus den Okularen weitere Vergrößerungen: {powers:x}.",
        ["reason/evens-steps"] = "Macht zusammen mit den anderen empfohlenen Teilen die Abstufung der Vergrößerungen gleichmäßiger.",
        ["reason/in-telescope"] = "{telescope:telescope}: {sentence}",

        // Warnings.
        ["caution/sun"] = "Blicken Sie mit dem Teleskop niemals in die Sonne, wenn nicht ein geeigneter Filter vor der ganzen Öffnung sitzt. Verschließen Sie den Sucher oder nehmen Sie ihn ab, und lassen Sie Kinder nicht aus den Augen: Ein Augenblick genügt, um das Augenlicht zu verlieren.",
        ["caution/eyesight"] = "Wann Sie die Brille abnehmen können, sagt hier eine optische Faustregel und keine Messung Ihrer Augen. Fragen zu Ihren Augen gehören in augenärztliche oder augenoptische Hände.",
        ["caution/exit-pupil-narrow"] = "Bei {power:x}er Vergrößerung ist die Austrittspupille nur {exitPupilMm:mm} groß, kleiner als {leastMm:mm}: Das Bild wird dunkel, und kleine Trübungen im eigenen Auge werden sichtbar.",
        ["caution/exit-pupil-wide"] = "Bei {power:x}er Vergrößerung ist die Austrittspupille {exitPupilMm:mm} groß, weiter als die {pupilMm:mm} der Augenpupille: Ein Teil des Lichts gelangt nicht ins Auge.",

        // What else is worth knowing.
        ["note/wide-view-not-granted"] = "Für große Nebel wünscht man sich ein wahres Gesichtsfeld von {trueFieldDeg:deg}; innerhalb dieser Grenzen bietet das keine Zusammenstellung.",
        ["note/range-set-by-barrel"] = "{telescope:telescope}: Das Auge käme auch mit weniger als {lowest:x}er Vergrößerung zurecht, aber kein übliches Okular für diesen Okularauszug geht tiefer.",
        ["note/best-found"] = "Das ist das Beste, was sich mit dem begrenzten Rechenaufwand finden ließ; dass es nichts Besseres gibt, ist nicht bewiesen.",
        ["note/alternative-not-found"] = "Was Sie nehmen könnten, falls {name} nicht zu haben ist, ließ sich mit dem begrenzten Rechenaufwand nicht finden.",
        ["note/larger-budget-helps"] = "Ein Budget von {budget:money} würde allein schon genügen.",
        ["note/other-max-purchases-helps"] = "Die Zahl der erlaubten Käufe auf {maxPurchases} zu erhöhen, würde allein schon genügen.",
        ["note/other-max-barlows-helps"] = "Die Zahl der erlaubten Barlowlinsen auf {maxBarlows} zu erhöhen, würde allein schon genügen.",
        ["note/more-overlaps-help"] = "Die Zahl der erlaubten Doppelungen auf {allowedOverlaps} zu erhöhen, würde allein schon genügen.",
        ["note/narrower-frame-helps"] = "Ein wahres Gesichtsfeld von {widthDeg:deg} statt {askedDeg:deg} zu verlangen, würde allein schon genügen.",
        ["note/no-single-change-helps"] = "Eine einzelne Grenze zu ändern, genügt nicht; nehmen Sie einen der genannten Wünsche zurück, oder ändern Sie mehrere Grenzen.",

        // Demands that cannot be met together.
        ["conflict/must-include"] = "{name} lässt sich innerhalb dieser Grenzen{together} nicht kaufen.",
        ["conflict/must-frame"] = "Ein wahres Gesichtsfeld von {widthDeg:deg} ist innerhalb dieser Grenzen{together} nicht zu haben.",
        ["conflict/must-frame/named"] = "Ein wahres Gesichtsfeld von {widthDeg:deg} für „{name}“ ist innerhalb dieser Grenzen{together} nicht zu haben.",
        ["conflict/reticle"] = "Ein Fadenkreuzokular mit mindestens {leastPower:x}er Vergrößerung ist innerhalb dieser Grenzen{together} nicht zu haben.",
        ["conflict/together"] = " zusammen mit den anderen hier genannten Wünschen",
        ["conflict/alone"] = "",
        ["conflict/no-candidate"] = "{name} soll unbedingt gekauft werden, kommt aber nicht infrage: {sentence} Ändern Sie das, oder nehmen Sie es aus `mustInclude` heraus.",

        // Rules that a shopping list breaks.
        ["breach/budget"] = "Die Liste kostet zusammen {totalPrice:money}, mehr als das Budget von {budget:money}.",
        ["breach/max-purchases"] = "Teile auf der Liste: {purchases}; erlaubt sind höchstens {maxPurchases}.",
        ["breach/max-barlows"] = "Barlowlinsen auf der Liste: {barlows}; erlaubt sind höchstens {maxBarlows}.",
        ["breach/reticles"] = "Fadenkreuzokulare auf der Liste: {reticles}; eines genügt.",
        ["breach/overlap"] = "{firstView} und {secondView} wiederholen einander ({telescope:telescope}; Doppelungen: {overlaps}, erlaubt: {allowedOverlaps}).",
        ["breach/must-include"] = "{name} sollte gekauft werden, steht aber nicht auf der Liste.",
        ["breach/must-frame"] = "Mit dieser Liste passten {widthDeg:deg} nirgends auf einmal ins Gesichtsfeld{widest}.",
        ["breach/must-frame/named"] = "Mit dieser Liste passte „{name}“ ({widthDeg:deg}) nirgends ganz ins Gesichtsfeld{widest}.",
        ["breach/reticle"] = "Mit dieser Liste gäbe es kein Fadenkreuzokular; gewünscht ist eines mit mindestens {leastPower:x}er Vergrößerung.",
        ["breach/reticle/weak"] = "Mit dieser Liste käme das Fadenkreuzokular auf {power:x}e Vergrößerung; gewünscht ist mindestens {leastPower:x}e.",
        ["breach/in-telescope"] = "{telescope:telescope}: {sentence}",
        ["breach/view"] = "{eyepiece:item} ({power:x})",
        ["breach/view/zoom"] = "{eyepiece:item} ({power:x} bis {powerAtShortest:x})",
        ["breach/view-through"] = "{eyepiece:item} mit {barlow:item} (Faktor {factor:factor}, {power:x})",
        ["breach/view-through/zoom"] = "{eyepiece:item} mit {barlow:item} (Faktor {factor:factor}, {power:x} bis {powerAtShortest:x})",
        ["breach/widest"] = "; das größte wahre Gesichtsfeld wäre {trueFieldDeg:deg}",
        ["breach/no-view"] = "",

        // Why an item of the catalogue is no candidate.
        ["exclusion/excluded-by-request"] = "In der Anfrage ausgeschlossen.",
        ["exclusion/excluded-by-request/barlow"] = "Barlowlinsen sind nicht gewünscht.",
        ["exclusion/excluded-by-request/zoom"] = "Zoomokulare sind nicht gewünscht.",
        ["exclusion/out-of-stock"] = "Zurzeit nicht lieferbar.",
        ["exclusion/reticle"] = "Ist ein Fadenkreuzokular, und ein solches ist nicht gewünscht.",
        ["exclusion/reticle/owned"] = "Ist ein Fadenkreuzokular, und ein geeignetes ist schon vorhanden.",
        ["exclusion/over-budget"] = "Kostet {price:money}, mehr als das Budget von {limit:money}.",
        ["exclusion/over-budget/item"] = "Kostet {price:money}; ein einzelnes Teil darf höchstens {limit:money} kosten.",
        ["exclusion/too-heavy"] = "Wiegt {massGrams:g}, mehr als die erlaubten {limit:g}.",
        ["exclusion/barrel-too-wide"] = "Das Steckmaß von {barrel:barrel} passt hier in keinen Okularauszug.",
        ["exclusion/outside-power-range"] = "Ergibt {power:x}e Vergrößerung ({telescope:telescope}); sinnvoll sind dort {lowest:x} bis {highest:x}.",
        ["exclusion/outside-power-range/zoom"] = "Ergibt {power:x}e bis {powerAtShortest:x}e Vergrößerung ({telescope:telescope}); sinnvoll sind dort {lowest:x} bis {highest:x}.",
        ["exclusion/outside-power-range/reticle"] = "Erreicht weder allein noch mit einer Barlowlinse die gewünschte {leastPower:x}e Vergrößerung.",
        ["exclusion/eye-relief-too-short"] = "Der Augenabstand beträgt {eyeReliefMm:mm}; nötig sind {neededMm:mm}.",
        ["exclusion/apparent-field-too-narrow"] = "Das scheinbare Gesichtsfeld beträgt {apparentFieldDeg:deg}; gewünscht sind mindestens {leastDeg:deg}.",
        ["exclusion/overlaps-owned"] = "Wiederholt Vergrößerungen, die Ihre Ausrüstung schon bietet.",
        ["exclusion/overlaps-owned/itself"] = "Ist schon vorhanden.",

        // What a catalogue is warned of.
        ["warning/unknown-column"] = "Die Spalte {column} ist nicht bekannt und bleibt weg. Wenn ihr Inhalt erhalten bleiben soll, nennen Sie sie attributes.{column}.",
        ["warning/unknown-column/nearest"] = "Die Spalte {column} ist nicht bekannt und bleibt weg. Meinten Sie {nearest}?",
        ["warning/unknown-column/nameless"] = "Die Spalte {number} hat keinen Namen und bleibt weg.",
        ["warning/field-stop-wider-than-barrel"] = "Eine Feldblende von {fieldStopMm:mm} passt nicht in ein Steckmaß von {barrel:barrel}, das etwa {mostMm:mm} durchlässt.",
        ["warning/apparent-field-wider-than-barrel"] = "{apparentFieldDeg:deg} bei {focalLengthMm:mm} brauchen eine Feldblende von {neededMm:mm}; ein Steckmaß von {barrel:barrel} lässt etwa {mostMm:mm} durch.",
        ["warning/field-stop-contradicts-apparent-field"] = "Eine Feldblende von {fieldStopMm:mm} ergibt bei dieser Brennweite etwa {impliedDeg:deg} scheinbares Gesichtsfeld, nicht {apparentFieldDeg:deg}.",
        ["warning/zoom-fields-swapped"] = "Das scheinbare Gesichtsfeld ist bei der längsten Brennweite größer als bei der kürzesten; bei Zoomokularen ist es umgekehrt.",
        ["warning/price-of-zero"] = "Der Preis ist 0; der Artikel würde als Geschenk empfohlen.",
        ["warning/alike-items"] = "Gleicht dem Artikel {other} in allem außer der Kennung.",
        ["warning/same-gtin"] = "Der Artikel {other} hat dieselbe GTIN.",
        ["warning/unknown-currency"] = "{currency} ist keine Währung nach ISO 4217.",
        ["warning/focal-ratio-too-fast"] = "Die Brennweite ist kleiner als das Doppelte der Öffnung: Sind die beiden vertauscht?",
    }.ToFrozenDictionary(StringComparer.Ordinal);
}
