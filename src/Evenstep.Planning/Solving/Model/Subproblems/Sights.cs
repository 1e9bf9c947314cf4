using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Model.Subproblems;

/// <summary>
/// The usable views, in every telescope, of the owned oculars and of every choice: alone and through the owned Barlows, or
/// through one Barlow that is for sale.
/// </summary>
internal sealed class Sights
{
    /// <summary>Memory of one view, in bytes, with the room that a growing list leaves.</summary>
    private const long BytesPerView = 160;

    /// <summary>Steps of work to make or refuse one view.</summary>
    private const long StepsPerView = 30;

    private readonly Showing[] all;
    private readonly int[] starts;
    private readonly int slots;

    private Sights(Showing[] all, int[] starts, int slots) => (this.all, this.starts, this.slots) = (all, starts, slots);

    public bool IsEmpty => all.Length == 0;

    public int Count => all.Length;

    /// <summary>Null if there is no memory for them.</summary>
    /// <param name="problem">Whose telescopes and owned items they are made with.</param>
    /// <param name="choices">What is for sale.</param>
    /// <param name="barlow">The Barlow looked through; null for the views alone and through what is owned.</param>
    /// <param name="budget">Counts the work and holds the memory; what is held stays held.</param>
    public static Sights? Of(PurchaseProblem problem, IReadOnlyList<Choice> choices, Item? barlow, WorkBudget budget)
    {
        Item?[] barlows = barlow is null ? [null, .. problem.Owned.Where(item => item.IsBarlow)] : [barlow];
        var oculars = problem.Owned.Count(IsLookedThrough) + choices.Count(choice => IsLookedThrough(choice.Representative));
        var most = (long)problem.Telescopes.Length * oculars * barlows.Sum(FactorsOf);
        var slots = choices.Count + 1;
        var bytes = (most * BytesPerView) + (sizeof(int) * ((long)problem.Telescopes.Length * slots));
        if (!budget.TryHold(bytes))
        {
            return null;
        }

        var sights = Made(problem, choices, barlows, slots, budget);
        budget.Release((most - sights.all.Length) * BytesPerView);
        return sights;
    }

    /// <summary>Of the owned oculars in one telescope.</summary>
    public ReadOnlySpan<Showing> OfOwned(int telescope) => Slot(telescope * slots);

    public ReadOnlySpan<Showing> Of(int telescope, Choice choice) => Slot((telescope * slots) + choice.Index + 1);

    /// <summary>Of every view in one telescope, in degrees.</summary>
    public void AddTrueFields(int telescope, HashSet<double> fields)
    {
        foreach (ref readonly var view in all.AsSpan(starts[telescope * slots]..starts[(telescope + 1) * slots]))
        {
            fields.Add(view.TrueFieldDeg);
        }
    }

    private ReadOnlySpan<Showing> Slot(int slot) => all.AsSpan(starts[slot]..starts[slot + 1]);

    private static Sights Made(PurchaseProblem problem, IReadOnlyList<Choice> choices, Item?[] barlows, int slots, WorkBudget budget)
    {
        List<Showing> all = [];
        var starts = new int[(problem.Telescopes.Length * slots) + 1];
        var slot = 0;
        foreach (var telescope in problem.Telescopes)
        {
            foreach (var owned in problem.Owned.Where(IsLookedThrough))
            {
                Add(owned, bought: false);
            }

            starts[++slot] = all.Count;
            foreach (var choice in choices)
            {
                if (IsLookedThrough(choice.Representative))
                {
                    Add(choice.Representative, bought: true);
                }

                starts[++slot] = all.Count;
            }

            void Add(Item ocular, bool bought)
            {
                foreach (var barlow in barlows)
                {
                    KitViews.AddUsable(problem, telescope, ocular, bought, barlow, all);
                    budget.Spend(StepsPerView * FactorsOf(barlow));
                }
            }
        }

        return new Sights([.. all], starts, slots);
    }

    private static bool IsLookedThrough(Item item) => item.Ocular is not null && !item.IsReticle;

    private static long FactorsOf(Item? barlow) => barlow?.Optic is Optics.Barlow { Factors.Length: var count } ? count : 1;
}
