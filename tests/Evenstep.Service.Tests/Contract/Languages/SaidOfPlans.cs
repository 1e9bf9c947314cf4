using System.Text.Json;
using System.Text.Json.Nodes;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Solving;
using Evenstep.Planning.Tests.Oracle;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Answering.Solving;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Languages;
using Evenstep.Service.Features.ProductPages;
using Evenstep.Service.Features.SecondOpinions;
using Evenstep.Service.Tests.Answers;

namespace Evenstep.Service.Tests.Contract.Languages;

/// <summary>Everything that answers say in words.</summary>
internal static class SaidOfPlans
{
    private const double Work = 10;
    private const int MostMatches = 4;

    private static readonly CatalogueSnapshot CatalogueSnapshot = CatalogueSnapshot.WithDemo();

    /// <summary>Every sentence of the answers to random problems.</summary>
    public static IEnumerable<Sentence> Random(int problems, int firstSeed) =>
        Enumerable.Range(firstSeed, problems).SelectMany(seed => Of(AnswersTo(BodyOf(seed), ShoppingLists.Draw(RandomProblems.Make(seed), seed))));

    /// <summary>Every sentence of the answers to one problem, and about what its shopping list holds.</summary>
    public static IEnumerable<Sentence> Of(JsonObject body, params string[] shoppingList) => Of(AnswersTo(body, shoppingList));

    /// <summary>Every second one names nothing that is to be framed.</summary>
    private static JsonObject BodyOf(int seed)
    {
        var body = OracleBody.Of(RandomProblems.Make(seed));
        foreach (var framing in int.IsEvenInteger(seed) ? body["preferences"]!["mustFrame"]!.AsArray() : [])
        {
            framing!["name"] = null;
        }

        return body;
    }

    private static (RecommendationAnswer Advice, ListAnswer List, MatchAnswer[] Matches) AnswersTo(JsonObject json, string[] shoppingList)
    {
        using var body = JsonDocument.Parse(json.ToJsonString());
        var faults = new Faults();
        var asked = RecommendationReader.Read(body.RootElement, CatalogueSnapshot, faults) ?? throw new InvalidDataException(string.Join("; ", faults.Shown));
        var plan = Planner.Solve(asked.Problem, new WorkBudget(Work));
        var opinion = SecondOpinionWriter.Write(
            new SecondOpinionAsked { Planning = asked, ShoppingList = [.. shoppingList.Select(id => asked.Catalogue.Items[id])] },
            new Solved(plan, TimeSpan.Zero));
        MatchAnswer[] matches = asked.Problem.Telescopes.Length > 1
            ? []
            : [.. asked.Catalogue.Items.Values.Take(MostMatches).Select(item => MatchWriter.Write(asked, item))];
        return (opinion.Advice, opinion.List, matches);
    }

    private static IEnumerable<Sentence> Of((RecommendationAnswer Advice, ListAnswer List, MatchAnswer[] Matches) answers) =>
        [.. answers.List.Breaches.Select(breach => breach.Text), .. answers.Matches.Select(match => match.Verdict.Text), .. Of(answers.Advice)];

    private static IEnumerable<Sentence> Of(RecommendationAnswer answer) =>
    [
        .. answer.Purchases.SelectMany(purchase => purchase.Reasons).Concat(answer.Notes).Concat(answer.Cautions)
            .Concat(answer.Conflicts?.Demands ?? []).Select(remark => remark.Text),
        .. (answer.Excluded.Listed ?? []).Select(exclusion => exclusion.Detail),
    ];

    /// <summary>A sentence and those within it.</summary>
    public static IEnumerable<Sentence> WithParts(Sentence sentence) =>
        sentence.Values.SelectMany(value => value.Value as IEnumerable<object> ?? [value.Value!]).OfType<Sentence>().SelectMany(WithParts).Prepend(sentence);
}
