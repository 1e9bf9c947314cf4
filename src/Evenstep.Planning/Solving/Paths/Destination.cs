using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Search;

namespace Evenstep.Planning.Solving.Paths;

/// <summary>Where a path must end, and what it takes at the least to get there.</summary>
/// <param name="ground">The problem.</param>
/// <param name="stepAllowed">The largest step that the end must keep to.</param>
internal sealed class Destination(PathGround ground, Step stepAllowed)
{
    private const int MostGapsWeighed = 16;

    private const long StepsOfChoice = 10;
    private const long StepsOfBarlow = 10;

    private readonly double half = stepAllowed.WithTolerance.Half;
    private readonly int mostFactors = ground.BarlowChoices.Select(choice => ground.FactorsOf(choice.Barlow)).DefaultIfEmpty(0).Max();
    private readonly bool anyZoom = ground.Problem.Owned.Any(item => item.IsZoom) || ground.Choices.Any(choice => choice.Item.IsZoom);

    /// <summary>Whether a holding is an allowed set whose steps are small enough.</summary>
    public bool IsReachedBy(Holding holding) =>
        holding.OpenFramings == 0
        && holding.LargestStep().AtMost(stepAllowed)
        && ground.Musts.All(holding.Has)
        && holding.HasReticle();

    /// <summary>What must still be spent to arrive, at the least; null if there is no way.</summary>
    public Money? LeastMoneyFrom(Holding holding)
    {
        var (musts, least) = (0, Money.Zero);
        foreach (var must in ground.Musts.Where(must => !holding.Has(must)))
        {
            (musts, least) = (musts + 1, least + must.Price);
        }

        if (musts > holding.CountLeft || IsTooFar(holding))
        {
            return null;
        }

        return LeastMoneyToCover(holding) is { } cover ? Money.Max(least, cover) : null;
    }

    /// <summary>Whether more views are needed than all further purchases together can give.</summary>
    private bool IsTooFar(Holding holding)
    {
        var most = anyZoom ? long.MaxValue : MostMoreViews(holding);
        return holding.Telescopes.Any(one => one.PointsNeeded(half) > most);
    }

    /// <summary>The most views that further purchases can add: so many of them Barlows, the rest oculars.</summary>
    private long MostMoreViews(Holding holding)
    {
        var (most, ways) = (0L, 1 + holding.Barlows.Sum(ground.FactorsOf));
        for (var barlows = 0; barlows <= Math.Min(holding.BarlowsLeft, ground.BarlowChoices.Length); barlows++)
        {
            var (factors, oculars) = (barlows * mostFactors, holding.CountLeft - barlows);
            most = Math.Max(most, (oculars * (ways + factors)) + (holding.Oculars.Count * factors));
        }

        return most;
    }

    /// <summary>Each gap must be covered by something bought: the dearest to cover says what must be spent.</summary>
    private Money? LeastMoneyToCover(Holding holding)
    {
        var dearest = Money.Zero;
        Span<double> places = stackalloc double[MostGapsWeighed];
        for (var t = 0; t < holding.Telescopes.Count; t++)
        {
            foreach (var place in places[..holding.Telescopes[t].Uncovered(half, places)])
            {
                if (holding.CountLeft == 0 || LeastMoneyToCover(holding, t, place) is not { } price)
                {
                    return null;
                }

                dearest = Money.Max(dearest, price);
            }
        }

        return dearest;
    }

    /// <summary>An ocular alone or through a Barlow that is there; or any Barlow, for who knows what it shows.</summary>
    private Money? LeastMoneyToCover(Holding holding, int telescope, double place)
    {
        var barlow = holding.BarlowsLeft > 0 ? ground.BarlowChoices.FirstOrDefault(choice => !holding.Has(choice)) : null;
        foreach (var choice in ground.Choices)
        {
            ground.Steps.Count(StepsOfChoice + (StepsOfBarlow * holding.Barlows.Count));
            if (choice.Price >= barlow?.Price)
            {
                break;
            }

            if (choice.Ocular >= 0 && Covers(holding, choice.Ocular, telescope, place))
            {
                return choice.Price;
            }
        }

        return barlow?.Price;
    }

    private bool Covers(Holding holding, int ocular, int telescope, double place)
    {
        if (Covers(ground.SightsOf(ocular, Choice.None), telescope, place))
        {
            return true;
        }

        foreach (var barlow in holding.Barlows)
        {
            if (Covers(ground.SightsOf(ocular, barlow), telescope, place))
            {
                return true;
            }
        }

        return false;
    }

    private bool Covers(Sight[] sights, int telescope, double place)
    {
        foreach (ref readonly var sight in sights.AsSpan())
        {
            if (sight.Telescope == telescope && Islands.Covers(sight.Reach, place, half))
            {
                return true;
            }
        }

        return false;
    }
}
