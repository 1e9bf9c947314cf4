using System.Collections.Immutable;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Targets;

/// <summary>Writes targets, and which view is for what.</summary>
internal static class TargetWriter
{
    private const string ExitPupils = "wanted-exit-pupils";

    /// <summary>Which view of a telescope is for what; null if that was not asked for.</summary>
    public static IReadOnlyList<TargetAnswer>? Write(ImmutableArray<AskedTarget>? asked, Ladder ladder) =>
        asked?.Select(target => SuggestionOf(target, Suggestion.For(target.Target, ladder))).ToList();

    /// <summary>The targets known.</summary>
    public static KnownTargetsAnswer WriteKnown() => new()
    {
        Targets = [.. KnownTarget.All.Select(KnownOf)],
        Sources = [.. Words<WidthSource>.All.Append(ExitPupils).Select(code => Phrase.Of("source", new Remark(code, [])))],
    };

    private static TargetAnswer SuggestionOf(AskedTarget asked, Suggestion suggestion) => new()
    {
        Id = asked.Known?.Id,
        Name = NameOf(asked.Known?.Id, asked.Target),
        CommonName = CommonNameOf(asked.Known),
        WidthArcmin = Rounded.Arcmin(asked.Target.WidthArcmin),
        WantedExitPupilMm = Rounded.Millimetres(asked.Target.WantedExitPupilMm),
        Fits = suggestion.Fits,
        View = suggestion is { View: { } view, Setting: { } setting } ? ViewOf(view, setting) : null,
    };

    private static TargetViewAnswer ViewOf(KitView view, Setting setting) => new()
    {
        EyepieceId = view.Eyepiece.Id,
        BarlowId = view.Barlow?.Id,
        Factor = view.View.Factor,
        FocalLengthMm = Rounded.Millimetres(setting.FocalLengthMm),
        Power = Rounded.Power(setting.Power),
        ExitPupilMm = Rounded.Millimetres(setting.ExitPupilMm),
        TrueFieldDeg = Rounded.FieldDeg(setting.TrueFieldDeg),
    };

    private static KnownTargetAnswer KnownOf(KnownTarget known) => new()
    {
        Id = known.Id,
        Name = NameOf(known.Id, known.Target),
        CommonName = CommonNameOf(known),
        Kind = known.Kind,
        WidthArcmin = Rounded.Arcmin(known.Target.WidthArcmin),
        WidthFrom = known.WidthFrom,
        WantedExitPupilMm = Rounded.Millimetres(known.Target.WantedExitPupilMm),
    };

    /// <summary>Most designations are the same in every language.</summary>
    private static Sentence NameOf(string? id, Target target)
    {
        var key = $"designation/{id}";
        return Language.English.Sentences.ContainsKey(key) ? new Sentence(key, []) : new Sentence("designation/any", [RemarkValue.Of("name", target.Name)]);
    }

    private static Sentence? CommonNameOf(KnownTarget? known)
    {
        var key = $"target/{known?.Id}";
        return Language.English.Sentences.ContainsKey(key) ? new Sentence(key, []) : null;
    }
}
