using Evenstep.Planning.Advice;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Pictures;

/// <summary>What one picture says, in one language. What it says several times is put into words once.</summary>
internal sealed class PictureWords(Language language)
{
    private readonly Dictionary<Item, string> names = [];
    private readonly Dictionary<KitView, string> told = new(ReferenceEqualityComparer.Instance);

    private const double AlmostAll = 99;

    /// <summary>Beside a ratio that counts twice.</summary>
    public const string Twice = "²";

    public Language Language { get; } = language;

    public string Say(string key, params ReadOnlySpan<RemarkValue> values) => Typesetting.Valid(new Sentence(key, [.. values]).In(Language));

    /// <summary>A sentence made elsewhere, whose names are still as they were given.</summary>
    public string Say(Sentence sentence) => Typesetting.Valid(Cleaned(sentence).In(Language));

    public string NameOf(Telescope telescope) => Say("picture/telescope", RemarkValue.Of("telescope", Typesetting.Quoted(telescope.Name)));

    /// <summary>What the shop or the owner calls it; without a name, what it is.</summary>
    public string NameOf(Item item) => Once(names, item, MakeName);

    public string PowerOf(double power) => Say("picture/power", RemarkValue.Power("power", power));

    /// <summary>What sets the ends of the powers of use.</summary>
    public string RangeOf(PowerRange range) =>
        Say($"picture/lowest/{Words<RangeEnd>.Of(range.LowestSetBy)}", RemarkValue.Power("power", range.Lowest)) + " "
        + Say($"picture/highest/{Words<RangeEnd>.Of(range.HighestSetBy)}", RemarkValue.Power("power", range.Highest));

    /// <summary>What the observer sees of a view: sky framed, brightness, then power.</summary>
    public string SightOf(View view) => string.Join(" · ", SkyOf(view), PupilOf(view), PowerOf(view)).Replace(" mm", "\u00A0mm", StringComparison.Ordinal);

    /// <summary>A view in one sentence.</summary>
    public string Tell(KitView view) => Once(told, view, MakeTold);

    /// <summary>The Barlow of a view, with its factor where it has several.</summary>
    public string Through(KitView view)
    {
        var barlow = RemarkValue.Of("barlow", Typesetting.Quoted(NameOf(view.Barlow!)));
        return ((Barlow)view.Barlow!.Optic).Factors.Length > 1
            ? Say("picture/through/factor", barlow, RemarkValue.Of("factor", view.View.Factor))
            : Say("picture/through", barlow);
    }

    /// <summary>An item of a kit, and whether it is owned.</summary>
    public string Whose(Item item, bool isNew) => Say(isNew ? "picture/item/new" : "picture/item/own", RemarkValue.Of("name", NameOf(item)));

    /// <summary>The Barlow of a view, and whether it is owned.</summary>
    public string WhoseThrough(KitView view, bool isNew) =>
        Say(isNew ? "picture/item/new/through" : "picture/item/own/through", RemarkValue.Of("name", Through(view)));

    /// <summary>A step in one sentence.</summary>
    public string Tell(Jump jump, Step enough) => Say(
        jump.IsEnough(enough) ? "picture/step" : "picture/step/wide",
        RemarkValue.Power("from", jump.FromPower),
        RemarkValue.Power("to", jump.ToPower),
        RemarkValue.Ratio("ratio", jump.ToPower / jump.FromPower),
        RemarkValue.Ratio("weighed", jump.Weighed.Ratio));

    /// <summary>The ratio of a step; at an end of the range, where it counts twice, with a 2 above it.</summary>
    public string RatioOf(Jump jump, Step enough) => Say(
        jump.IsEnough(enough) ? "picture/ratio" : "picture/ratio/wide",
        RemarkValue.Ratio("ratio", jump.ToPower / jump.FromPower),
        RemarkValue.Of("twice", jump.AtEnd ? Twice : ""));

    /// <summary>How much of the powers of use a ladder serves; not quite all is never called all.</summary>
    public string ServedBy(Ladder ladder)
    {
        var (share, percent) = (ladder.Figures.ServedShare, Rounded.To(100 * ladder.Figures.ServedShare, 0));
        return Say("picture/served", RemarkValue.Of("percent", (int)(Tolerance.Below(share, 1) ? Math.Min(percent, AlmostAll) : percent)));
    }

    private string MakeName(Item item) => item.Name is { } name ? Typesetting.Clean(name) : item.Optic switch
    {
        Zoom zoom => Say(
            item.IsOwn ? "picture/nameless-zoom" : "picture/nameless-zoom/listed",
            Id(item),
            RemarkValue.Millimetres("shortestMm", zoom.ShortestFocalLengthMm),
            RemarkValue.Millimetres("longestMm", zoom.LongestFocalLengthMm)),
        Barlow barlow => Say(
            item.IsOwn ? "picture/nameless-barlow" : "picture/nameless-barlow/listed", Id(item), new RemarkValue("factors", barlow.Factors.ToArray(), 2)),
        _ => Say(
            item.IsOwn ? "picture/nameless-eyepiece" : "picture/nameless-eyepiece/listed",
            Id(item),
            RemarkValue.Millimetres("focalLengthMm", item.Ocular!.LongestFocalLengthMm)),
    };

    private string MakeTold(KitView view) => Say(
        view.NeedsPurchase ? "picture/view/new" : "picture/view",
        RemarkValue.Degrees("trueFieldDeg", view.View.TrueFieldDeg),
        RemarkValue.Of("pupil", PupilOf(view.View)),
        RemarkValue.Of("power", PowerOf(view.View)),
        RemarkValue.Of("through", Typesetting.Quoted(NameOf(view.Eyepiece)) + (view.Barlow is null ? "" : $" {Through(view)}")));

    private string SkyOf(View view) => Say("picture/sky", RemarkValue.Degrees("trueFieldDeg", view.TrueFieldDeg));

    private string PupilOf(View view) => Say(
        view.IsZoom ? "picture/pupil/zoom" : "picture/pupil",
        RemarkValue.Millimetres("exitPupilMm", view.ExitPupilMm),
        RemarkValue.Millimetres("narrowestMm", view.Telescope.Telescope.ApertureMm / view.PowerAtShortest));

    private string PowerOf(View view) => view.IsZoom
        ? Say("picture/power/zoom", RemarkValue.Power("power", view.Power), RemarkValue.Power("highest", view.PowerAtShortest))
        : PowerOf(view.Power);

    private static string Once<T>(Dictionary<T, string> said, T about, Func<T, string> make)
        where T : class
    {
        if (!said.TryGetValue(about, out var words))
        {
            words = make(about);
            said.Add(about, words);
        }

        return words;
    }

    private static Sentence Cleaned(Sentence sentence) =>
        sentence with { Values = [.. sentence.Values.Select(value => value with { Value = Cleaned(value.Value) })] };

    private static object? Cleaned(object? value) => value switch
    {
        string text => Typesetting.Quoted(text),
        string[] texts => texts.Select(Typesetting.Quoted).ToArray(),
        Item item => ItemPhrase.IsMadeUp(item) ? item : Typesetting.Quoted(ItemPhrase.NameOf(item)),
        Item[] items => items.Select(Cleaned).ToArray(),
        Sentence part => Cleaned(part),
        Sentence[] parts => parts.Select(Cleaned).ToArray(),
        _ => value,
    };

    private static RemarkValue Id(Item item) => RemarkValue.Of("id", Typesetting.Quoted(item.Id));
}
