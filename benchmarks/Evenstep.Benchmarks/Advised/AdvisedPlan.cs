using System.Collections.Immutable;
using System.Text.Json;

namespace Evenstep.Benchmarks.Advised;

/// <summary>The answer to a request of the grid: what of it a customer would notice.</summary>
internal sealed class AdvisedPlan
{
    /// <summary>An item may be spare although the widest field shrinks by so little.</summary>
    private const double WidestFieldKept = 0.98;

    private readonly ImmutableArray<AdvisedView> views;
    private readonly ImmutableHashSet<string> bought;
    private readonly double highestPower;

    public AdvisedPlan(GridRequest request, JsonElement answer)
    {
        Request = request;
        Outcome = answer.GetProperty("outcome").GetString()!;
        bought = [.. answer.GetProperty("purchases").EnumerateArray().Select(item => item.GetProperty("itemId").GetString()!)];
        BuysBarlow = answer.GetProperty("purchases").EnumerateArray().Any(item => item.GetProperty("kind").GetString() == "barlow");
        var telescope = answer.GetProperty("telescopes")[0];
        highestPower = telescope.GetProperty("powerRange").GetProperty("highest").GetDouble();
        if (telescope.GetProperty("after") is not { ValueKind: JsonValueKind.Object } after)
        {
            views = [];
            return;
        }

        Price = answer.GetProperty("totalPrice").GetDouble();
        LeastLargestStep = answer.GetProperty("leastLargestStep").GetDouble();
        LargestStep = after.GetProperty("largestStep") is { ValueKind: JsonValueKind.Number } step ? step.GetDouble() : double.PositiveInfinity;
        MeanExcessPercent = after.GetProperty("meanExcessPercent") is { ValueKind: JsonValueKind.Number } excess ? excess.GetDouble() : double.PositiveInfinity;
        ServedPercent = after.GetProperty("servedPercent").GetDouble();
        ComfortablePercent = after.GetProperty("comfortablePercent").GetDouble();
        views = [.. after.GetProperty("views").EnumerateArray().Where(view => view.GetProperty("usable").GetBoolean()).Select(view => new AdvisedView(view))];
        ShowsLessWithoutSpare = SpareSets(answer).Any(LosesSky);
    }

    public GridRequest Request { get; }

    public string Outcome { get; }

    public bool Buys => !bought.IsEmpty;

    public bool BuysBarlow { get; }

    public double Price { get; }

    /// <summary>The least that any allowed set attains, as the answer tells it.</summary>
    public double LeastLargestStep { get; }

    public double LargestStep { get; }

    public double MeanExcessPercent { get; }

    public double ServedPercent { get; }

    public double ComfortablePercent { get; }

    /// <summary>Nothing served is all comfortable.</summary>
    public double ComfortableOverServed => ServedPercent > 0 ? ComfortablePercent / ServedPercent : 1;

    /// <summary>Whether something owned is called spare although, without it, clearly less sky is to be seen.</summary>
    public bool ShowsLessWithoutSpare { get; }

    /// <summary>Whether some usable view that needs a purchase has the drawback.</summary>
    public bool HasBought(string drawback) => ThroughPurchases.Any(view => view.Drawbacks.Contains(drawback));

    /// <summary>Whether there is a purchase none of whose usable views is without the drawback.</summary>
    public bool HasOnly(string drawback) => bought.Any(id =>
        views.Any(view => view.Needs(id)) && views.Where(view => view.Needs(id)).All(view => view.Drawbacks.Contains(drawback)));

    /// <summary>What is bought and has, somewhere, a usable view with the drawback: the eyepiece, or the Barlow where that is owned.</summary>
    public ImmutableHashSet<string> BoughtWith(string drawback) =>
        [.. ThroughPurchases.Where(view => view.Drawbacks.Contains(drawback)).Select(view => view.FirstOf(bought)!)];

    /// <summary>Whether some usable view that needs a purchase has a power above the range.</summary>
    public bool GoesAboveRange => ThroughPurchases.Any(view => view.Power > highestPower);

    private IEnumerable<AdvisedView> ThroughPurchases => views.Where(view => bought.Any(view.Needs));

    private bool LosesSky(ImmutableHashSet<string> spare)
    {
        var widest = views.Max(view => (double?)view.TrueFieldDeg);
        var left = views.Where(view => !spare.Any(view.Needs)).Max(view => (double?)view.TrueFieldDeg);
        return widest is not null && !(left >= WidestFieldKept * widest);
    }

    private static IEnumerable<ImmutableHashSet<string>> SpareSets(JsonElement answer)
    {
        foreach (var item in answer.GetProperty("spare").EnumerateArray())
        {
            yield return [item.GetString()!];
        }

        if (answer.GetProperty("spareTogether") is { ValueKind: JsonValueKind.Array } together)
        {
            yield return [.. together.EnumerateArray().Select(item => item.GetString()!)];
        }
    }
}

/// <summary>A usable view of the kit.</summary>
internal sealed class AdvisedView(JsonElement view)
{
    private readonly string eyepieceId = view.GetProperty("eyepieceId").GetString()!;
    private readonly string? barlowId = view.GetProperty("barlowId").GetString();

    public double Power { get; } = view.GetProperty("power").GetDouble();

    public double TrueFieldDeg { get; } = view.GetProperty("trueFieldDeg").GetDouble();

    public ImmutableArray<string> Drawbacks { get; } = [.. view.GetProperty("drawbacks").EnumerateArray().Select(code => code.GetString()!)];

    /// <summary>The eyepiece, else the Barlow, else null.</summary>
    public string? FirstOf(ImmutableHashSet<string> ids) =>
        ids.Contains(eyepieceId) ? eyepieceId : barlowId is not null && ids.Contains(barlowId) ? barlowId : null;

    public bool Needs(string id) => eyepieceId == id || barlowId == id;
}
