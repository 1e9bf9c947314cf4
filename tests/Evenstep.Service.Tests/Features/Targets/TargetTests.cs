using System.Text.Json.Nodes;
using Evenstep.Planning.Advice;
using Evenstep.Service.Contract.Languages;
using Evenstep.Service.Tests.Answers;

namespace Evenstep.Service.Tests.Features.Targets;

public sealed class TargetTests(Service service) : IClassFixture<Service>
{
    private const string Recommendations = "/v1/recommendations";

    [Fact]
    public async Task The_known_targets_are_listed_with_their_sources()
    {
        var answer = await service.GetAsync("/v1/targets");

        Assert.Equal((200, "application/json", "en", "Accept-Language"), (answer.Status, answer.ContentType, answer.Language, answer.Vary));
        Assert.Empty(AnswerShape.Differences("targets", answer.Json));
        var known = answer.As<KnownTargets>();
        Assert.All(known.Targets, target => Assert.Contains(target.WidthFrom, known.Sources.Select(source => source.Code)));
        Assert.Equal(KnownTarget.All.Select(target => target.Id), known.Targets.Select(target => target.Id));
    }

    [Fact]
    public void Every_common_name_is_of_a_known_target()
    {
        var named = Language.English.Sentences.Keys.Where(key => key.StartsWith("target/", StringComparison.Ordinal)).Select(key => key["target/".Length..]);

        Assert.Empty(named.Except(KnownTarget.All.Select(known => known.Id)));
    }

    [Fact]
    public void A_designation_with_words_is_in_every_language_and_in_English_as_it_is_known()
    {
        var worded = KnownTarget.All.Where(known => Language.English.Sentences.ContainsKey($"designation/{known.Id}")).ToList();

        Assert.All(worded, known => Assert.Equal(known.Target.Name, Language.English.Sentences[$"designation/{known.Id}"]));
        Assert.All(KnownTarget.All.Where(known => known.Target.Name.Contains(" and ", StringComparison.Ordinal)), known => Assert.Contains(known, worded));
        Assert.Equal(worded.Count + 1, Language.English.Sentences.Keys.Count(key => key.StartsWith("designation/", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task Nothing_is_said_of_targets_unless_they_are_asked_for()
    {
        var answer = await service.PostAsync(Recommendations, Repository.Example("recommendation-listed-telescope"));

        Assert.All(Ladders(answer), ladder => Assert.Null(ladder.Targets));
    }

    [Fact]
    public async Task Asking_for_targets_changes_nothing_else()
    {
        var (without, with) = (BodyWith(false), BodyWith(true));

        var plain = JsonNode.Parse((await service.PostAsync(Recommendations, without)).Body)!;
        var explained = JsonNode.Parse((await service.PostAsync(Recommendations, with)).Body)!;

        Assert.Equal(WithoutTargets(plain), WithoutTargets(explained));
    }

    [Fact]
    public async Task Known_targets_come_by_their_names_in_the_language_asked_for()
    {
        var english = await service.PostAsync(Recommendations, BodyWith(true));
        var german = await service.PostAsync(Recommendations, BodyWith(true), language: "de");

        Assert.All(Ladders(english), ladder => Assert.Equal(KnownTarget.All.Length, ladder.Targets!.Count));
        Assert.Contains("\"name\":\"M 42\",\"commonName\":\"Orion Nebula\"", english.Body, StringComparison.Ordinal);
        Assert.Contains("\"name\":\"M 42\",\"commonName\":\"Orionnebel\"", german.Body, StringComparison.Ordinal);
        Assert.Contains("\"name\":\"NGC 6960 and NGC 6992\",", english.Body, StringComparison.Ordinal);
        Assert.Contains("\"name\":\"NGC 6960 und NGC 6992\",", german.Body, StringComparison.Ordinal);
        Assert.Contains("\"name\":\"Mond\",", german.Body, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Targets_of_the_callers_own_come_in_their_order()
    {
        var answer = await service.PostAsync("/v1/assessments", """
            {
              "telescopes": [ { "apertureMm": 100, "focalLengthMm": 1000, "focuserBarrel": "1.25in" } ],
              "owned": [
                { "id": "20", "kind": "eyepiece", "focalLengthMm": 20, "apparentFieldDeg": 50, "eyeReliefMm": 16, "barrel": "1.25in" },
                { "id": "8-24", "kind": "zoom", "shortestFocalLengthMm": 8, "longestFocalLengthMm": 24, "apparentFieldAtShortestDeg": 60,
                  "apparentFieldAtLongestDeg": 40, "eyeReliefMm": 15, "barrel": "1.25in" }
              ],
              "explain": { "targets": [
                { "name": "wide", "widthArcmin": 400, "wantedExitPupilMm": 5 }, { "name": "small", "widthArcmin": 1, "wantedExitPupilMm": 1 }
              ] }
            }
            """);

        var targets = answer.As<Assessment>().Telescopes[0].Ladder.Targets!;
        Assert.Equal(
            """{"id":null,"name":"wide","commonName":null,"widthArcmin":400,"wantedExitPupilMm":5,"fits":false""" +
            ""","view":{"eyepieceId":"20","barlowId":null,"factor":1,"focalLengthMm":20,"power":50,"exitPupilMm":2,"trueFieldDeg":1}}""",
            Reading.Text(targets[0]));
        Assert.Equal(
            """{"id":null,"name":"small","commonName":null,"widthArcmin":1,"wantedExitPupilMm":1,"fits":true""" +
            ""","view":{"eyepieceId":"8-24","barlowId":null,"factor":1,"focalLengthMm":10,"power":100,"exitPupilMm":1,"trueFieldDeg":0.575}}""",
            Reading.Text(targets[1]));
    }

    private static string BodyWith(bool targets)
    {
        var body = JsonNode.Parse(Repository.Example("recommendation-listed-telescope"))!;
        body["explain"] = new JsonObject { ["targets"] = targets };
        return body.ToJsonString();
    }

    private static IEnumerable<Ladder> Ladders(Answer answer) => answer.As<Recommendation>().Telescopes
        .SelectMany(telescope => (Ladder[])[telescope.Before, telescope.After!]);

    private static string WithoutTargets(JsonNode answer)
    {
        answer["solver"]!["milliseconds"] = 0;
        foreach (var ladder in answer["telescopes"]!.AsArray().SelectMany(telescope => (JsonNode?[])[telescope!["before"], telescope["after"]]))
        {
            ladder!["targets"] = null;
        }

        return answer.ToJsonString();
    }
}
