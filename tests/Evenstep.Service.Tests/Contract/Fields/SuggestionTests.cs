using System.Globalization;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Tests.Contract.Fields;

/// <summary>Suggestions for misspelt names must not cost a hostile caller's victim more than they are worth.</summary>
public sealed class SuggestionTests(Service service) : IClassFixture<Service>
{
    [Fact]
    public async Task A_hundred_unknown_ids_among_thousands_are_all_named()
    {
        var items = BodyPatch.Repeat($$"""{ "id": "{{new string('z', 50)}}-#", "kind": "barlow", "factors": [ 2 ], "barrel": "2in", "price": 1 }""", 3000, ",");
        var owned = BodyPatch.Repeat($$"""{ "id": "{{new string('y', 50)}}-#" }""", 100, ",");
        var changes = new Dictionary<string, string?> { ["/catalogue/items"] = $"[{items}]", ["/owned"] = $"[{owned}]", ["/preferences/mustInclude"] = null };
        var body = BodyPatch.Apply(TestFile.Valid("recommendations"), changes);

        var answer = await service.PostAsync("/v1/recommendations", body);

        Assert.Equal(100, answer.Errors.Length);
    }

    [Fact]
    public void A_suggestion_compares_no_more_letters_than_it_is_worth()
    {
        const int Letters = 50;
        var looked = 0;
        var known = Enumerable.Range(0, 100_000).Select(i =>
        {
            looked++;
            return string.Create(CultureInfo.InvariantCulture, $"{i:00000}{new string('z', Letters - 5)}");
        });

        Assert.Null(NearestName.To(new string('y', Letters), known));

        Assert.InRange(looked, 1, (500_000 / (Letters * Letters)) + 1);
    }

    [Fact]
    public async Task A_misspelt_id_is_found_among_thousands()
    {
        var items = string.Join(',', Enumerable.Range(1, 3000).Select(i => string.Create(
            CultureInfo.InvariantCulture,
            $$"""{ "id": "lens-{{i * 7919}}", "kind": "barlow", "factors": [ 2 ], "barrel": "2in", "price": 1, "inStock": false }""")));
        var changes = new Dictionary<string, string?> { ["/catalogue/items"] = $"[{items}]", ["/preferences/mustInclude"] = "[\"lnes-79190\"]" };

        var answer = await service.PostAsync("/v1/recommendations", BodyPatch.Apply(TestFile.Valid("recommendations"), changes));

        Assert.Contains("mean `lens-79190`", answer.Problem.Detail, StringComparison.Ordinal);
    }
}
