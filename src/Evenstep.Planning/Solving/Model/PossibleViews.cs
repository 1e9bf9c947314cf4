using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Model;

/// <summary>A usable view that exists if its choices are bought; null stands for something owned.</summary>
internal sealed record PossibleView(KitView KitView, Choice? Eyepiece, Choice? Barlow)
{
    public Reach Reach => KitView.Reach;

    public bool IsCertain => Eyepiece is null && Barlow is null;
}

/// <summary>Every usable view in one telescope that owned items and choices can make.</summary>
internal sealed record PossibleViews(TelescopeInUse Telescope, ImmutableArray<PossibleView> All)
{
    /// <summary>The views of each telescope, less those that need a pair of choices never bought together.</summary>
    public static ImmutableArray<PossibleViews> Of(PurchaseProblem problem, ImmutableArray<Choice> choices) =>
        [.. problem.Telescopes.Select(telescope => new PossibleViews(telescope, [.. In(telescope, problem, choices)]))];

    public PossibleViews Without(Func<PossibleView, bool> impossible) =>
        this with { All = [.. All.Where(view => !impossible(view))] };

    private static IEnumerable<PossibleView> In(TelescopeInUse telescope, PurchaseProblem problem, ImmutableArray<Choice> choices)
    {
        (Item Item, Choice? Choice)[] all =
        [
            .. problem.Owned.Select(item => (item, (Choice?)null)),
            .. choices.Select(choice => (choice.Representative, (Choice?)choice)),
        ];
        var barlows = Array.FindAll(all, one => one.Item.IsBarlow && one.Item.Optic.Barrel.FitsInto(telescope.Telescope.FocuserBarrel));
        foreach (var (eyepiece, choice) in all.Where(one => one.Item.Ocular is not null && !one.Item.IsReticle))
        {
            foreach (var view in KitViews.Alone(problem, telescope, eyepiece, choice is not null).Where(view => view.IsUsable))
            {
                yield return new PossibleView(view, choice, null);
            }

            foreach (var (barlow, barlowChoice) in barlows)
            {
                foreach (var view in KitViews.Through(problem, telescope, eyepiece, choice is not null, barlow, barlowChoice is not null).Where(view => view.IsUsable))
                {
                    yield return new PossibleView(view, choice, barlowChoice);
                }
            }
        }
    }
}
