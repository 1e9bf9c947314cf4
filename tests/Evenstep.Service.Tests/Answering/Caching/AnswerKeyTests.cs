using Evenstep.Service.Answering.Caching;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Contract.Languages;
using Evenstep.Service.Http.Authentication;
using Evenstep.Service.Http.Negotiation;
using Evenstep.Service.Tests.Catalogues;

namespace Evenstep.Service.Tests.Answering.Caching;

public sealed class AnswerKeyTests
{
    private static readonly CatalogueSnapshot Demo = CatalogueSnapshot.WithDemo();
    private static readonly Representation English = new(AnswerFormat.Json, Language.English);

    [Fact]
    public void Everything_that_decides_an_answer_is_in_its_key()
    {
        string[] keys =
        [
            AnswerKey.Of("/a", English, Demo, "{}"u8), AnswerKey.Of("/b", English, Demo, "{}"u8),
            AnswerKey.Of("/a", English with { Language = German.Language }, Demo, "{}"u8),
            AnswerKey.Of("/a", English with { Form = AnswerFormat.Picture }, Demo, "{}"u8), AnswerKey.Of("/a", English, Demo, "{ }"u8),
        ];

        Assert.Distinct(keys);
        Assert.Equal(keys[0], AnswerKey.Of("/a", English, Demo, "{}"u8));
    }

    [Fact]
    public void A_change_makes_new_answers_only_for_the_catalogue_changed()
    {
        var registry = new CatalogueRegistry(CatalogueFiles.WithDemo());
        registry.Finish(0);
        var of = (string body) => AnswerKey.Of("/a", English, registry.Of(Owner.Nobody), System.Text.Encoding.UTF8.GetBytes(body));
        const string Shop = """{ "limits": {}, "catalogue": { "x": [ {} ], "id": "shop" } }""";
        const string Other = """{ "catalogue": { "id": "demo" } }""";
        registry.Take(Wares.Key, Wares.Catalogue(price: 10), 1);
        var (shop, other) = (of(Shop), of(Other));

        registry.Take(Wares.Key, Wares.Catalogue(price: 11), 2);

        Assert.NotEqual(shop, of(Shop));
        Assert.Equal(other, of(Other));
    }

    [Theory]
    [InlineData("""{ "catalogue": { "id": "shop" } }""", "shop")]
    [InlineData("\uFEFF{ \"catalogue\": { \"id\": \"shop\" } }", "shop")]
    [InlineData("""{ "a": { "catalogue": { "id": "no" } }, "b": [ { "id": "no" } ], "\u0063atalogue": { "currency": "EUR", "id": "\u0073hop" } }""", "shop")]
    [InlineData("""{ "catalogue": { "id": null, "items": [ { "id": "no" } ] } }""", null)]
    [InlineData("""{ "catalogue": { "items": [ { "id": "no" } ] }, "id": "no" }""", null)]
    [InlineData("""{ "catalogue": "no" }""", null)]
    [InlineData("""[ "catalogue" ]""", null)]
    [InlineData("""{ "catalogue": { "id": "\ud800" } }""", null)]
    [InlineData("""{ "catalogue": { "id": """, null)]
    [InlineData("", null)]
    public void The_catalogue_is_found_without_reading_the_rest(string body, string? id) =>
        Assert.Equal(id, NamedCatalogue.Of(System.Text.Encoding.UTF8.GetBytes(body)));
}
