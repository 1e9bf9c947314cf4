using System.Diagnostics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Benchmarks.Ways;

/// <summary>The plain model, solved stage after stage by one solver.</summary>
/// <param name="name">In the report.</param>
/// <param name="program">A new program for the solver; null if the package does not have the solver.</param>
internal sealed class PlainWay(string name, Func<ILinearProgram?> program) : Way(name)
{
    /// <summary>Slack for what scaling and a solver's own tolerance do to a sum.</summary>
    private const double Slack = 1e-6;

    public override Answer Solve(PurchaseProblem problem, TimeSpan cap)
    {
        var started = Stopwatch.GetTimestamp();
        if (PlainViews.Of(problem) is not { } views)
        {
            return new Answer(Ending.NotCarried);
        }

        if (problem.Demands.MustInclude.Any(id => views.Candidates.All(item => item.Id != id)))
        {
            return Answer.Infeasible;
        }

        if (views.Arcs > PlainViews.MostArcs)
        {
            return new Answer(Ending.TooLarge);
        }

        return Solve(views, WideViewWish.TrueFieldWished(problem, views.Candidates), Left);

        TimeSpan Left() => cap - Stopwatch.GetElapsedTime(started);
    }

    private Answer Solve(PlainViews views, double? wish, Func<TimeSpan> left)
    {
        using var solver = program();
        if (solver is null)
        {
            return new Answer(Ending.NotCarried);
        }

        var model = new PlainModel(views, solver, wish);
        return new Stages(model, solver, left).Run();
    }

    /// <summary>Each stage asks for the least of its value and keeps the next ones to it.</summary>
    private sealed class Stages(PlainModel model, ILinearProgram solver, Func<TimeSpan> left)
    {
        private RunEnd end;
        private QualityMeasure? measure;

        public Answer Run()
        {
            if (Least(model.LargestStep) is not { } first)
            {
                return Unproved();
            }

            var lnStepAllowed = StageValues.StepLeeway * first.LnLargestStep;
            model.KeepLargestStep(lnStepAllowed);
            if (model.Wish is { } wish)
            {
                if (Least([new Term(wish, -1)]) is null)
                {
                    return Unproved();
                }

                solver.Fix(wish, solver.IsOne(wish));
            }

            if (Least(model.MeanExcess) is not { } second)
            {
                return Unproved();
            }

            solver.Row(0, model.MeanExcess, second.MeanExcess + StageValues.ExcessLeeway + Slack, inWholes: false);
            var quality = 0.0;
            if (model.Problem.Preferences.Prefer != Prefer.LowPrice)
            {
                measure = QualityMeasure.Of(model.Problem, [0], new Step(lnStepAllowed));
                var terms = model.Quality(measure);
                if (Least([.. terms.Select(term => term with { Coefficient = -term.Coefficient })]) is not { } good)
                {
                    return Unproved();
                }

                quality = good.Quality;
                solver.Row(quality - StageValues.QualityLeeway - Slack, terms, double.PositiveInfinity, inWholes: false);
            }

            var preference = model.Preference();
            if (Least(preference) is not { } third)
            {
                return Unproved();
            }

            solver.Row(0, preference, third.Preference - model.PreferenceOwned + Slack, inWholes: false);
            return Least(model.Price) is { } last
                ? new Answer(Ending.Proved, new StageFigures(first.LnLargestStep, second.MeanExcess, quality, third.Preference, last.Price))
                : Unproved();
        }

        private StageFigures? Least(IReadOnlyCollection<Term> value)
        {
            end = left() > TimeSpan.Zero ? solver.Minimize(value, left()) : RunEnd.Capped;
            return end == RunEnd.Best ? StageFigures.Of(model.Problem, model.Purchases(), measure) : null;
        }

        private Answer Unproved() => end switch
        {
            RunEnd.Infeasible => Answer.Infeasible,
            RunEnd.Capped => new Answer(Ending.Capped),
            _ => new Answer(Ending.Failed),
        };
    }
}
