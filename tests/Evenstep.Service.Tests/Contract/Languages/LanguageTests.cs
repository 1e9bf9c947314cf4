using System.Text.Json.Nodes;
using Evenstep.Service.Http.Negotiation;

namespace Evenstep.Service.Tests.Contract.Languages;

/// <summary>A caller is answered in the language asked for.</summary>
public sealed class LanguageTests(Service service) : IClassFixture<Service>
{
    private const string Path = "/v1/recommendations";

    private static readonly string Body = Repository.Example("recommendation-spectacles");

    /// <summary>The only fields that a language decides.</summary>
    private static readonly string[] InWords = ["text", "detail", "commonName"];

    private static readonly string[] TwoHeaders = ["en;q=0.5", "de"];

    [Theory]
    [InlineData("de", "de")]
    [InlineData("DE-at", "de")]
    [InlineData("en", "en")]
    [InlineData("en-GB, de;q=0.9", "en")]
    [InlineData("de;q=0.9, en;q=0.8", "de")]
    [InlineData("en;q=0.4, de;q=0.5", "de")]
    [InlineData("fr, de;q=0.1", "de")]
    [InlineData("fr", "en")]
    [InlineData("*", "en")]
    [InlineData("en;q=0, *", "de")]
    [InlineData("en;q=0, *;q=0.5", "de")]
    [InlineData("de;q=0", "en")]
    [InlineData("de;q=0, *", "en")]
    [InlineData("del", "en")]
    [InlineData("", "en")]
    [InlineData("de;q=x;;", "en")]
    public void The_language_asked_for_most_is_chosen_among_those_spoken(string header, string tag) =>
        Assert.Equal(tag, LanguageChoice.Of(header).Tag);

    [Fact]
    public void Several_headers_are_one() => Assert.Equal("de", LanguageChoice.Of(TwoHeaders).Tag);

    [Theory]
    [InlineData(Path, "recommendation-spectacles")]
    [InlineData("/v1/assessments", "assessment-two-telescopes")]
    [InlineData("/v1/second-opinions", "second-opinion-spectacles")]
    [InlineData("/v1/spending-curves", "spending-curve-spectacles")]
    [InlineData("/v1/choices", "choice-spectacles")]
    [InlineData("/v1/buying-paths", "buying-path-beginner")]
    public async Task An_answer_says_what_language_it_is_in_and_that_it_might_be_in_another(string path, string example)
    {
        var german = await service.PostAsync(path, Repository.Example(example), language: "de-CH, en;q=0.5");
        var english = await service.PostAsync(path, Repository.Example(example));

        Assert.Equal((200, "de", "en"), (german.Status, german.Language, english.Language));
        Assert.All([german, english], answer => Assert.EndsWith("Accept-Language", answer.Vary, StringComparison.Ordinal));
        Assert.Contains("niemals in die Sonne", german.Body, StringComparison.Ordinal);
        Assert.Contains("Never look at the Sun", english.Body, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nothing_but_the_sentences_depends_on_the_language()
    {
        var german = await service.PostAsync(Path, Body, language: "de");
        var english = await service.PostAsync(Path, Body);

        Assert.NotEqual(german.Body, english.Body);
        Assert.Equal(WithoutWords(english.Body), WithoutWords(german.Body));
    }

    [Fact]
    public async Task Every_sentence_is_in_the_language()
    {
        var german = SentencesOf(JsonNode.Parse((await service.PostAsync(Path, Body, language: "de")).Body)).ToList();
        var english = SentencesOf(JsonNode.Parse((await service.PostAsync(Path, Body)).Body)).ToList();

        Assert.True(english.Count > 50, $"only {english.Count} sentences");
        Assert.Equal(english.Count, german.Count);
        Assert.All(english.Zip(german), pair => Assert.NotEqual(pair.First, pair.Second));
    }

    [Fact]
    public async Task An_answer_that_is_kept_is_not_given_to_somebody_of_another_language()
    {
        foreach (var language in (string[])["de", "en", "de", "en"])
        {
            Assert.Equal(language, (await service.PostAsync(Path, Body, language: language)).Language);
        }
    }

    [Theory]
    [InlineData("{}", "`telescopes` fehlt; erlaubt: eine Liste mit 1 bis")]
    [InlineData("[]", "Bei der obersten Stelle im Body: Angegeben: eine Liste; erlaubt: ein Objekt mit")]
    [InlineData(
        """{ "telescopes": 1, "observer": { "age": "zwölf", "seeingArcsec": 100 }, "limits": { "budget": 1.234, "maxPurchase": 2 } }""",
        "Angaben im Body sind falsch; `errors` nennt jede")]
    public async Task Errors_are_in_the_language_that_is_asked_for(string body, string said)
    {
        var answer = await service.PostAsync(Path, body, language: "de");
        var english = await service.PostAsync(Path, body);

        Assert.Equal((400, "de", "en"), (answer.Status, answer.Language, english.Language));
        Assert.All([answer, english], one => Assert.EndsWith("Accept-Language", one.Vary, StringComparison.Ordinal));
        Assert.Contains("Die Anfrage ist nicht zu verstehen", answer.Body, StringComparison.Ordinal);
        Assert.Contains(said, answer.Body, StringComparison.Ordinal);
        Assert.DoesNotMatch("must be|was given|given more", answer.Body);
        Assert.Equal(ErrorCodesOf(english.Body), ErrorCodesOf(answer.Body));
    }

    [Fact]
    public async Task An_error_of_which_a_part_is_English_is_in_English_altogether_and_says_so()
    {
        var answer = await service.PostAsync(Path, """{ "catalogue": { "currency": "Euro" } }""", language: "de");

        Assert.Equal((400, "en"), (answer.Status, answer.Language));
        Assert.Contains("The request cannot be understood", answer.Body, StringComparison.Ordinal);
        Assert.DoesNotContain("erlaubt", answer.Body, StringComparison.Ordinal);
    }

    private static IEnumerable<string> ErrorCodesOf(string body) =>
        JsonNode.Parse(body)!["errors"]!.AsObject().SelectMany(error => error.Value!.AsArray().Select(one => $"{error.Key} {one!["code"]}"));

    private static IEnumerable<string> SentencesOf(JsonNode? json) => json switch
    {
        JsonObject fields => fields.SelectMany(field => field.Key is "text" or "detail" ? [field.Value!.GetValue<string>()] : SentencesOf(field.Value)),
        JsonArray list => list.SelectMany(SentencesOf),
        _ => [],
    };

    private static string WithoutWords(string body)
    {
        var json = JsonNode.Parse(body)!;
        json["solver"]!["milliseconds"] = 0;
        Silence(json);
        return json.ToJsonString();
    }

    private static void Silence(JsonNode? json)
    {
        foreach (var name in InWords.Where(name => json is JsonObject fields && fields.ContainsKey(name)))
        {
            json![name] = "";
        }

        foreach (var part in (json as JsonObject)?.Select(field => field.Value) ?? json as JsonArray ?? [])
        {
            Silence(part);
        }
    }
}
