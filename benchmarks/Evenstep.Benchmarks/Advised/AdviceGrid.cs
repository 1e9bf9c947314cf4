using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;

namespace Evenstep.Benchmarks.Advised;

/// <summary>A request of the grid, by what it is about.</summary>
/// <param name="Telescope">Its figures.</param>
/// <param name="OwnedMm">The focal lengths of what is owned.</param>
/// <param name="Observes">The interests; none for no preference.</param>
/// <param name="Budget">In the currency of the demo catalogue.</param>
internal sealed record GridRequest(GridTelescope Telescope, ImmutableArray<double> OwnedMm, ImmutableArray<string> Observes, int Budget)
{
    /// <summary>The usual apparent field of what comes with a telescope, in degrees.</summary>
    private const double OwnedApparentFieldDeg = 50;

    /// <summary>Ids of items not to be bought.</summary>
    public ImmutableHashSet<string> Exclude { get; init; } = [];

    public string Name => string.Create(CultureInfo.InvariantCulture, $"{Customer}, budget {Budget}");

    /// <summary>What it is about, the budget aside.</summary>
    public string Customer => string.Create(
        CultureInfo.InvariantCulture, $"{Telescope.Name}, owned {Listed(OwnedMm.Select(mm => $"{mm}"))}, observes {Listed(Observes)}");

    /// <summary>The body to send.</summary>
    public string Body => new JsonObject
    {
        ["telescopes"] = new JsonArray(Telescope.Json),
        ["observer"] = new JsonObject { ["observes"] = Array(Observes) },
        ["owned"] = new JsonArray([.. OwnedMm.Select(Owned)]),
        ["catalogue"] = new JsonObject { ["id"] = "demo" },
        ["limits"] = new JsonObject { ["budget"] = Budget },
        ["preferences"] = new JsonObject { ["exclude"] = Array(Exclude.Order(StringComparer.Ordinal)) },
    }.ToJsonString();

    private JsonNode Owned(double focalLengthMm) => new JsonObject
    {
        ["id"] = string.Create(CultureInfo.InvariantCulture, $"owned-{focalLengthMm}"),
        ["kind"] = "eyepiece",
        ["focalLengthMm"] = focalLengthMm,
        ["apparentFieldDeg"] = OwnedApparentFieldDeg,
        ["barrel"] = Telescope.Focuser == "0.965in" ? Telescope.Focuser : "1.25in",
    };

    private static JsonArray Array(IEnumerable<string> texts) => new([.. texts.Select(text => (JsonNode)text)]);

    private static string Listed(IEnumerable<string> texts) => string.Join(" + ", texts.DefaultIfEmpty("none"));
}

/// <summary>A telescope of the grid.</summary>
internal sealed record GridTelescope(double ApertureMm, double FocalLengthMm, string Focuser)
{
    public string Name => string.Create(CultureInfo.InvariantCulture, $"{ApertureMm}/{FocalLengthMm} {Focuser}");

    public JsonObject Json => new() { ["name"] = Name, ["apertureMm"] = ApertureMm, ["focalLengthMm"] = FocalLengthMm, ["focuserBarrel"] = Focuser };
}

/// <summary>Requests that cover what people come with: every combination of a telescope, what is owned, an interest and a budget.</summary>
internal static class AdviceGrid
{
    /// <summary>From here on nothing but the choice itself stands between a customer and good views.</summary>
    public const int AmpleBudget = 250;

    /// <summary>The nine of the demo catalogue, and four between and beyond them.</summary>
    private static readonly ImmutableArray<GridTelescope> Telescopes =
    [
        new(60, 660, "0.965in"), new(70, 420, "1.25in"), new(80, 480, "2in"), new(90, 910, "1.25in"), new(102, 632, "2in"), new(112, 482, "1.25in"),
        new(127, 1540, "1.25in"), new(130, 650, "1.25in"), new(152, 1216, "1.25in"), new(203, 1218, "2in"), new(254, 1190, "2in"), new(279, 2790, "2in"),
        new(406, 1830, "2in"),
    ];

    private static readonly ImmutableArray<ImmutableArray<double>> Owned = [[], [25], [25, 10]];

    private static readonly ImmutableArray<ImmutableArray<string>> Interests = [[], ["planets", "moon"], ["large-nebulae", "galaxies"]];

    private static readonly ImmutableArray<int> Budgets = [60, 120, AmpleBudget, 500, 2000];

    public static ImmutableArray<GridRequest> Requests { get; } =
    [
        .. from telescope in Telescopes
           from owned in Owned
           from interests in Interests
           from budget in Budgets
           select new GridRequest(telescope, owned, interests, budget),
    ];
}
