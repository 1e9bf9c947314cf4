using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model.Rules;
using Google.OrTools.Sat;

namespace Evenstep.Planning.Solving.Model;

/// <summary>
/// The purchase problem as a constraint model: a literal for each item that may be bought, and the rules of an allowed
/// set. The stages add what they ask for, solve, and take it away again.
/// </summary>
internal sealed class PurchaseModel
{
    /// <summary>The whole purchase problem. Each rule opens with the sentence that it encodes.</summary>
    private static readonly Action<PurchaseModel>[] AllowedSet =
    [
        OneOfAlikeItems.Keep,
        Budget.Keep,
        PurchaseCount.Keep,
        BarlowCount.Keep,
        OneReticle.Keep,
        NoOverlap.Keep,
        MustInclude.Keep,
        MustFrame.Keep,
        ReticleDemand.Keep,
        WideView.Keep,
    ];

    private readonly Dictionary<Item, BoolVar> bought = [];
    private readonly BoolVar[] chosen;
    private readonly ILiteral certain;
    private readonly Dictionary<(int Eyepiece, int Barlow), BoolVar> both = [];

    public PurchaseModel(PurchaseSpace space)
    {
        Space = space;
        certain = Cp.TrueLiteral();
        foreach (var item in space.Choices.SelectMany(choice => choice.Items))
        {
            bought[item] = Cp.NewBoolVar("");
        }

        chosen = [.. space.Choices.Select(choice => choice.Items.Length == 1 ? bought[choice.Items[0]] : Cp.NewBoolVar(""))];
        foreach (var rule in AllowedSet)
        {
            rule(this);
        }
    }

    public CpModel Cp { get; } = new();

    public PurchaseSpace Space { get; }

    public PurchaseProblem Problem => Space.Problem;

    public IEnumerable<Item> Items => bought.Keys;

    /// <summary>Overlapping pairs of views in which a purchase takes part; set by <see cref="NoOverlap"/> where counted.</summary>
    public LinearExpr OverlapCount { get; set; } = LinearExpr.Constant(0);

    public BoolVar Bought(Item item) => bought[item];

    public BoolVar Chosen(Choice choice) => chosen[choice.Index];

    /// <summary>A literal that is true only if the view exists: certain views are always true.</summary>
    public ILiteral Exists(PossibleView view) => (view.Eyepiece, view.Barlow) switch
    {
        ({ } eyepiece, { } barlow) => BothChosen(eyepiece, barlow),
        ({ } eyepiece, null) => Chosen(eyepiece),
        (null, { } barlow) => Chosen(barlow),
        _ => certain,
    };

    public LinearExpr Sum(Func<Item, long> amount) => SumOver(bought.Keys, amount);

    public LinearExpr SumOver(IEnumerable<Item> items, Func<Item, long> amount)
    {
        Item[] counted = [.. items];
        return LinearExpr.WeightedSum(counted.Select(item => bought[item]), counted.Select(amount));
    }

    /// <summary>Some view of these exists.</summary>
    public void RequireOneOf(IEnumerable<PossibleView> views)
    {
        PossibleView[] helpful = [.. views];
        if (!Array.Exists(helpful, view => view.IsCertain))
        {
            Cp.AddBoolOr(helpful.Select(Exists));
        }
    }

    /// <summary>Runs what a stage adds and asks, and leaves the model as it was before.</summary>
    public T Temporarily<T>(Func<T> stage)
    {
        LinkAllPairs();
        var (variables, constraints) = (Cp.Model.Variables, Cp.Model.Constraints);
        var (variablesBefore, constraintsBefore) = (variables.Count, constraints.Count);
        try
        {
            return stage();
        }
        finally
        {
            Shorten(constraints, constraintsBefore);
            Shorten(variables, variablesBefore);
            Cp.Model.Objective = null;
            Cp.Model.SolutionHint = null;
        }
    }

    private static void Shorten<T>(IList<T> list, int length)
    {
        while (list.Count > length)
        {
            list.RemoveAt(list.Count - 1);
        }
    }

    /// <summary>
    /// True only if both are bought. The converse is never asked for: literals of views are only ever used to have more of
    /// them.
    /// </summary>
    private BoolVar BothChosen(Choice eyepiece, Choice barlow)
    {
        if (!both.TryGetValue((eyepiece.Index, barlow.Index), out var literal))
        {
            literal = Cp.NewBoolVar("");
            Cp.AddBoolAnd([Chosen(eyepiece), Chosen(barlow)]).OnlyEnforceIf(literal);
            both[(eyepiece.Index, barlow.Index)] = literal;
        }

        return literal;
    }

    /// <summary>What a stage takes away again must not hold a pair that a later one counts on.</summary>
    private void LinkAllPairs()
    {
        foreach (var view in Space.Telescopes.SelectMany(telescope => telescope.All))
        {
            if (view is { Eyepiece: { } eyepiece, Barlow: { } barlow })
            {
                BothChosen(eyepiece, barlow);
            }
        }
    }
}
