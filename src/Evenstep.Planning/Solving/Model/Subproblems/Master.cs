using System.Collections.Immutable;
using Evenstep.Planning.Purchases;
using Google.OrTools.Sat;

namespace Evenstep.Planning.Solving.Model.Subproblems;

/// <summary>
/// The constraint model of the allowed sets with these Barlows: a literal for each choice, and every rule but those on
/// steps, excess and overlaps, which are kept by cuts as they are needed.
/// </summary>
internal sealed class Master
{
    private readonly Dictionary<Item, ILiteral> bought = [];
    private readonly BoolVar[] chosen;

    /// <param name="settled">The Barlows, and the choices that are left.</param>
    /// <param name="rules">What every set must keep to, each stated in its turn.</param>
    public Master(Settled settled, IEnumerable<Action<Master>> rules)
    {
        Settled = settled;
        chosen = [.. settled.Choices.Select(_ => Cp.NewBoolVar(""))];
        foreach (var rule in rules)
        {
            rule(this);
        }

        foreach (var (measure, most) in settled.Question.AtMost)
        {
            Cp.Add(measure.In(this) <= most);
        }

        if (settled.Question.Least is { } least)
        {
            Cp.Minimize(least.In(this));
        }
    }

    public CpModel Cp { get; } = new();

    public Settled Settled { get; }

    public PurchaseProblem Problem => Settled.Problem;

    /// <summary>The constraint on overlaps, where some are allowed.</summary>
    public LinearConstraintProto? Overlaps { get; set; }

    /// <summary>Every item that may be bought.</summary>
    public IEnumerable<Item> Items => bought.Keys;

    public BoolVar Chosen(int index) => chosen[index];

    public ILiteral Bought(Item item) => bought[item];

    /// <summary>Says which literal stands for an item.</summary>
    public void Name(Item item, ILiteral literal) => bought[item] = literal;

    public LinearExpr Sum(Func<Item, long> amount) => LinearExpr.WeightedSum(bought.Values, bought.Keys.Select(amount));

    /// <summary>The indices of the choices in a solution.</summary>
    public int[] Indices(CpSolver solver) => [.. Enumerable.Range(0, chosen.Length).Where(index => solver.BooleanValue(chosen[index]))];

    /// <summary>The items of a solution, in ordinal order of ids.</summary>
    public ImmutableArray<Item> Purchases(CpSolver solver) =>
        [.. bought.Where(one => solver.BooleanValue(one.Value)).Select(one => one.Key).OrderBy(item => item.Id, StringComparer.Ordinal)];
}
