using System.Globalization;
using System.Reflection;
using System.Text.Json;
using System.Text.RegularExpressions;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Service.Tests.House;

/// <summary>The README's tables of fields say what the service allows.</summary>
public sealed partial class ReadmeFieldTests
{
    private const string NoDefault = "—";
    private const string Required = "required";

    private static readonly Dictionary<string, Bounds> Constants = new()
    {
        ["telescopes"] = new(1, PurchaseProblem.MostTelescopes),
        ["telescopes[].apertureMm"] = Bounds.ApertureMm,
        ["telescopes[].focalLengthMm"] = Bounds.TelescopeFocalLengthMm,
        ["telescopes[].powerRange.lowest"] = Bounds.Power,
        ["telescopes[].powerRange.highest"] = Bounds.Power,
        ["observer.age"] = Bounds.AgeYears,
        ["observer.pupilMm"] = Bounds.PupilMm,
        ["observer.astigmatismDioptres"] = Bounds.CylinderDioptres,
        ["observer.leastEyeReliefMm"] = Bounds.EyeReliefMm,
        ["site.seeingArcsec"] = Bounds.SeeingArcsec,
        ["owned"] = new(0, PurchaseProblem.MostOwned),
        ["limits.budget"] = Bounds.Budget,
        ["limits.maxPurchases"] = new(0, Limits.MostPurchases),
        ["limits.maxBarlows"] = new(0, Limits.MostBarlows),
        ["limits.maxPricePerItem"] = Bounds.Price,
        ["limits.maxItemMassGrams"] = Bounds.MassGrams,
        ["limits.allowedOverlaps"] = new(0, Limits.MostOverlaps),
        ["preferences.leastStep"] = Bounds.LeastStep,
        ["preferences.enoughStep"] = Bounds.EnoughStep,
        ["preferences.leastApparentFieldDeg"] = Bounds.ApparentFieldDeg,
        ["preferences.exclude"] = new(0, PurchaseProblem.MostCatalogueItems),
        ["preferences.mustFrame"] = new(0, PurchaseProblem.MostDemands),
        ["preferences.mustFrame[].widthDeg"] = Bounds.WidthDeg,
        ["preferences.reticle.leastPower"] = Bounds.Power,
        ["explain.targets[].widthArcmin"] = Bounds.TargetWidthArcmin,
        ["explain.targets[].wantedExitPupilMm"] = Bounds.WantedExitPupilMm,
        ["price"] = Bounds.Price,
        ["focalLengthMm"] = Bounds.EyepieceFocalLengthMm,
        ["apparentFieldDeg"] = Bounds.ApparentFieldDeg,
        ["eyeReliefMm"] = Bounds.EyeReliefMm,
        ["fieldStopMm"] = Bounds.FieldStopMm,
        ["fastestFocalRatio"] = Bounds.FocalRatio,
        ["shortestFocalLengthMm"] = Bounds.EyepieceFocalLengthMm,
        ["longestFocalLengthMm"] = Bounds.EyepieceFocalLengthMm,
        ["apparentFieldAtShortestDeg"] = Bounds.ApparentFieldDeg,
        ["apparentFieldAtLongestDeg"] = Bounds.ApparentFieldDeg,
        ["factors"] = Bounds.BarlowFactor,
        ["massGrams"] = Bounds.MassGrams,
    };

    private static readonly JsonElement Schemas =
        JsonSerializer.Deserialize<JsonElement>(File.ReadAllText(Repository.DocumentPath)).GetProperty("components").GetProperty("schemas");

    public static TheoryData<string> Fields => [.. Readme.FieldRows.SelectMany(row => row.Fields)];

    [Fact]
    public void Every_bound_that_the_optics_know_is_quoted()
    {
        var known = typeof(Bounds).GetFields(BindingFlags.Public | BindingFlags.Static).Select(constant => (Bounds)constant.GetValue(null)!);
        var quoted = Readme.FieldRows.SelectMany(row => row.Fields).Where(Constants.ContainsKey).Select(name => Constants[name]).ToHashSet();

        Assert.All(known, bounds => Assert.Contains(bounds, quoted));
        Assert.Equal(Constants.Count, Readme.FieldRows.SelectMany(row => row.Fields).Count(Constants.ContainsKey));
    }

    [Theory]
    [MemberData(nameof(Fields))]
    public void The_bounds_and_the_default_quoted_are_those_that_hold(string name)
    {
        var row = Readme.FieldRows.Single(row => row.Fields.Contains(name));
        var quoted = Quoted(row.Bounds);
        var (schema, isRequired) = Find(name);

        Assert.Equal(BoundsOf(schema), quoted);
        Assert.Equal(Constants.TryGetValue(name, out var constant) ? constant : quoted, quoted);
        Assert.Equal(isRequired ? Required : DefaultOf(schema), row.Default.Trim('`'));
    }

    [Theory]
    [InlineData("RecommendationRequest")]
    [InlineData("AssessmentRequest")]
    [InlineData("SecondOpinionRequest")]
    [InlineData("BatchLine")]
    public void Every_field_of_a_request_is_named(string request) =>
        Assert.All(NamesWithin(Schemas.GetProperty(request)).Distinct(), IsNamed);

    [Theory]
    [InlineData("RecommendationAnswer")]
    [InlineData("PurchaseAnswer")]
    [InlineData("WithoutItemAnswer")]
    [InlineData("LadderAnswer")]
    [InlineData("ViewAnswer")]
    [InlineData("TargetAnswer")]
    [InlineData("TargetViewAnswer")]
    [InlineData("KnownTargetAnswer")]
    [InlineData("StepAnswer")]
    [InlineData("NearestAnswer")]
    [InlineData("SolverAnswer")]
    [InlineData("SecondOpinionAnswer")]
    [InlineData("ListAnswer")]
    [InlineData("DifferenceAnswer")]
    [InlineData("BuyingPathAnswer")]
    [InlineData("BuyingStepAnswer")]
    [InlineData("PathSolverAnswer")]
    [InlineData("SpendingCurveAnswer")]
    [InlineData("SpendingPointAnswer")]
    [InlineData("SpendingSolverAnswer")]
    [InlineData("BatchAnswer")]
    [InlineData("HoldsWhileAnswer")]
    [InlineData("HoldingIntervalAnswer")]
    [InlineData("OtherPurchasesAnswer")]
    [InlineData("ChoicesAnswer")]
    [InlineData("ChoiceAnswer")]
    [InlineData("LadderOfChoiceAnswer")]
    public void Every_field_of_an_answer_is_named(string answer) =>
        Assert.All(Schemas.GetProperty(answer).GetProperty("properties").EnumerateObject().Select(property => property.Name), IsNamed);

    private static void IsNamed(string field) => Assert.Matches($@"(?<!\w){field}(?!\w)", Readme.Text);

    private static Bounds? Quoted(string bounds) => Range().Match(bounds) is { Success: true } range
        ? new Bounds(NumberOf(range.Groups["least"].Value), NumberOf(range.Groups["most"].Value))
        : null;

    private static double NumberOf(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    /// <summary>Of a number, of how many entries a list has, or of the numbers in it.</summary>
    private static Bounds? BoundsOf(JsonElement schema)
    {
        if (schema.TryGetProperty("maximum", out var most))
        {
            return new Bounds(schema.GetProperty("minimum").GetDouble(), most.GetDouble());
        }

        if (!schema.TryGetProperty("items", out var items))
        {
            return null;
        }

        return BoundsOf(items)
            ?? new Bounds(schema.TryGetProperty("minItems", out var least) ? least.GetDouble() : 0, schema.GetProperty("maxItems").GetDouble());
    }

    private static string DefaultOf(JsonElement schema) =>
        schema.TryGetProperty("default", out var standard) ? JsonSerializer.Serialize(standard).Trim('"') : NoDefault;

    /// <summary>The schema of a field of a request by its path, or of an item where the field is named alone.</summary>
    private static (JsonElement Schema, bool IsRequired) Find(string name)
    {
        string[] path = [.. name.Split('.').Select(step => step.TrimEnd('[', ']'))];
        var isRequest = Schemas.GetProperty("RecommendationRequest").GetProperty("properties").TryGetProperty(path[0], out _);
        var found = (Schema: Schemas.GetProperty(isRequest ? "RecommendationRequest" : "Item"), IsRequired: true);
        foreach (var step in path)
        {
            found = Holders(found.Schema).Select(holder => PropertyOf(holder, step)).OfType<(JsonElement, bool)>().First();
        }

        return found;
    }

    private static (JsonElement Schema, bool IsRequired)? PropertyOf(JsonElement holder, string name) =>
        holder.GetProperty("properties").TryGetProperty(name, out var property)
            ? (property, holder.TryGetProperty("required", out var required) && required.EnumerateArray().Any(one => one.GetString() == name))
            : null;

    private static IEnumerable<string> NamesWithin(JsonElement schema) => Holders(schema)
        .SelectMany(holder => holder.GetProperty("properties").EnumerateObject())
        .SelectMany(property => NamesWithin(property.Value).Prepend(property.Name));

    /// <summary>The objects that a schema leads to, through references, choices and lists.</summary>
    private static IEnumerable<JsonElement> Holders(JsonElement schema) =>
        schema.TryGetProperty("$ref", out var reference) ? Holders(Schemas.GetProperty(reference.GetString()!.Split('/')[^1]))
        : schema.TryGetProperty("oneOf", out var choices) ? choices.EnumerateArray().SelectMany(Holders)
        : schema.TryGetProperty("items", out var items) ? Holders(items)
        : schema.TryGetProperty("properties", out _) ? [schema]
        : [];

    [GeneratedRegex(@"(?<least>-?[\d.]+) to (?<most>[\d.]+)")]
    private static partial Regex Range();
}
