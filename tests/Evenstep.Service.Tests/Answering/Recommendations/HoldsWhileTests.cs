using System.Text.Json.Nodes;
using Evenstep.Service.Tests.Answers;

namespace Evenstep.Service.Tests.Answering.Recommendations;

/// <summary>How far a recommendation holds is what the same request gets with the input changed.</summary>
public sealed class HoldsWhileTests(Service service) : IClassFixture<Service>
{
    private const string Path = "/v1/recommendations";

    [Fact]
    public async Task It_is_told_only_if_asked_for_and_changes_nothing_else()
    {
        var body = Example();
        var without = await service.PostAsync(Path, body.ToJsonString());
        body["explain"]!["holdsWhile"] = true;
        var with = await service.PostAsync(Path, body.ToJsonString());

        Assert.Null(without.As<Recommendation>().HoldsWhile);
        Assert.NotNull(with.As<Recommendation>().HoldsWhile);
        Assert.Equal(WithoutIt(without), WithoutIt(with));
    }

    [Theory]
    [InlineData("seeingArcsec")]
    [InlineData("pupilMm")]
    [InlineData("budget")]
    public async Task The_same_is_bought_within_and_what_is_named_beyond(string input)
    {
        var body = Example();
        body["explain"]!["holdsWhile"] = true;
        var advice = (await service.PostAsync(Path, body.ToJsonString())).As<Recommendation>();
        var holds = advice.HoldsWhile!;
        var interval = input switch { "seeingArcsec" => holds.SeeingArcsec!, "pupilMm" => holds.PupilMm!, _ => holds.Budget! };

        Assert.True(interval.From <= interval.To && interval.Tried > 0, $"{interval}");
        Assert.Equal(ItemsOf(advice), ItemsOf(await WithAsync(input, interval.From)));
        Assert.Equal(ItemsOf(advice), ItemsOf(await WithAsync(input, interval.To)));
        foreach (var other in new[] { interval.Below, interval.Above }.OfType<OtherPurchases>())
        {
            var there = await WithAsync(input, other.Value);
            Assert.Equal((string.Join(' ', other.ItemIds), other.TotalPrice), (ItemsOf(there), there.TotalPrice));
            Assert.NotEqual(ItemsOf(advice), ItemsOf(there));
        }
    }

    [Fact]
    public async Task Of_what_cannot_be_met_nothing_holds()
    {
        var body = Example();
        body["explain"]!["holdsWhile"] = true;
        body["limits"]!["budget"] = 10;

        Assert.Null((await service.PostAsync(Path, body.ToJsonString())).As<Recommendation>().HoldsWhile);
    }

    [Fact]
    public async Task What_no_set_is_allowed_with_says_so()
    {
        var body = Example();
        body["explain"]!["holdsWhile"] = true;
        body["preferences"] = new JsonObject { ["mustInclude"] = new JsonArray("stayrope-3x") };
        body["telescopes"]![0]!["powerRange"] = new JsonObject { ["lowest"] = 90 };
        body["limits"]!["budget"] = 33;

        var advice = (await service.PostAsync(Path, body.ToJsonString())).As<Recommendation>();

        Assert.Equal(("infeasible", null), (advice.HoldsWhile!.Budget!.Below!.Outcome, advice.HoldsWhile.Budget.Below.TotalPrice));
        Assert.Equal(("empty-range", null), (advice.HoldsWhile.SeeingArcsec!.Above!.Outcome, advice.HoldsWhile.SeeingArcsec.Above.TotalPrice));
        Assert.DoesNotContain(advice.Notes, note => note.Code == "holds-while-not-decided");
    }

    private async Task<Recommendation> WithAsync(string input, decimal value)
    {
        var body = Example();
        body[input switch { "seeingArcsec" => "site", "pupilMm" => "observer", _ => "limits" }]![input] = value;
        return (await service.PostAsync(Path, body.ToJsonString())).As<Recommendation>();
    }

    /// <summary>With a measured pupil: that of an age is told rounded.</summary>
    private static JsonObject Example()
    {
        var body = JsonNode.Parse(Repository.Example("recommendation-spectacles"))!.AsObject();
        body["observer"]!["pupilMm"] = 6;
        return body;
    }

    private static string ItemsOf(Recommendation advice) => string.Join(' ', advice.Purchases.Select(one => one.ItemId).Order(StringComparer.Ordinal));

    private static string WithoutIt(Answer answer)
    {
        var json = JsonNode.Parse(answer.Body)!;
        json["solver"]!["milliseconds"] = 0;
        json["holdsWhile"] = null;
        return json.ToJsonString();
    }
}
