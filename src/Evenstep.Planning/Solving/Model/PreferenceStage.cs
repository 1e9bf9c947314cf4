using Evenstep.Planning.Solving.Model.Subproblems;

namespace Evenstep.Planning.Solving.Model;

/// <summary>Among the sets that are as good as the best in steps, excess and quality, finds the one to recommend.</summary>
internal static class PreferenceStage
{
    /// <summary>The set to recommend.</summary>
    /// <param name="finder">Whom to ask.</param>
    /// <param name="question">What sets must keep to.</param>
    /// <param name="known">A set that does.</param>
    public static Standing Run(Finder finder, Question question, Standing known)
    {
        var preferred = known with { IsProved = true };
        if (Measure.PreferenceOf(finder.Problem) is { } preference)
        {
            preferred = Least(finder, question, preference, known);
            question = question.Below(preference, preference.Of(preferred.Purchases));
        }

        var cheapest = Least(finder, question, Measure.PriceThenCountThenTies, preferred);
        return cheapest with { IsProved = preferred.IsProved && cheapest.IsProved };
    }

    private static Standing Least(Finder finder, Question question, Measure measure, Standing known)
    {
        var answer = finder.Least(question, measure, known.Purchases);
        return Standing.Of(finder.Problem, answer.Purchases ?? known.Purchases, answer.IsDecided);
    }
}
