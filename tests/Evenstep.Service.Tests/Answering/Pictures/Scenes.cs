using System.Text.Json;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Solving;
using Evenstep.Planning.Tests.Oracle;
using Evenstep.Service.Answering.Pictures;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Tests.Answers;

namespace Evenstep.Service.Tests.Answering.Pictures;

/// <summary>Things to draw.</summary>
internal static class Scenes
{
    private const double Work = 10;

    private static readonly CatalogueSnapshot CatalogueSnapshot = CatalogueSnapshot.WithDemo();

    /// <summary>The recommendation for a random problem, its items named at random.</summary>
    public static LadderScene Random(int seed)
    {
        var body = OracleBody.Of(RandomProblems.Make(seed));
        var random = new Random(seed);
        foreach (var item in body["owned"]!.AsArray().Concat(body["catalogue"]!["items"]!.AsArray()).Where(item => item!["kind"] is not null))
        {
            item!["name"] = random.Next(3) == 0 ? null : HostileNames.Any(random);
        }

        return Of(body.ToJsonString());
    }

    public static LadderScene Of(string json)
    {
        using var body = JsonDocument.Parse(json);
        var faults = new Faults();
        var asked = RecommendationReader.Read(body.RootElement, CatalogueSnapshot, faults) ?? throw new InvalidDataException(string.Join("; ", faults.Shown));
        return RecommendationScene.Of(asked, Planner.Solve(asked.Problem, new WorkBudget(Work)));
    }
}

/// <summary>Names that a caller might give, some of them in bad faith.</summary>
internal static class HostileNames
{
    public static readonly string[] All =
    [
        "Plain 30", "<script>alert(1)</script>", "]]></style></svg>", "&amp;&#x0;\"'", new('W', 200), new('m', 200),
        string.Concat(Enumerable.Repeat("望遠鏡", 60)),
        "שלום עולם, עינית", "العدسة العينية الواسعة", "\u202Eright to left override\u2066", "👩‍👩‍👧‍👦 the family 😴😴😴",
        "a\u0301\u0301\u0301\u0301\u0301\u0301\u0301 pile of marks",
        "\uFFFE\uFFFF", "﷽﷽﷽", "𒐫𒈙𒐫", " ", "a  b", "x",
    ];

    public static string Any(Random random) => All[random.Next(All.Length)];
}
