using Evenstep.Benchmarks.Trials.Fuzz;
using Evenstep.Service.Tests.Judges;

namespace Evenstep.Service.Tests.Endurance;

/// <summary>The judge of drawn requests has been seen to object to each thing that it looks for.</summary>
public sealed class FuzzJudgeTests : IDisposable
{
    private const string Problem = "application/problem+json";

    private static readonly ApiOperation Recommend =
        new ApiDocument(Repository.DocumentPath).Operations.Single(one => one is { Method: "post", Path: "/v1/recommendations" });
    private static readonly string Good = Repository.Example("recommendation-shortest");

    private readonly Validator validator = new(Node.Folder, Repository.DocumentPath);

    [JudgeFact("ajv")]
    public void A_refusal_that_is_as_it_must_be_is_passed() => Assert.Empty(Findings("{}", new FuzzAnswer(400, Problem, ["Date"], Refusal("missing"))));

    [JudgeFact("ajv")]
    public void An_internal_error_is_objected_to() =>
        Assert.Contains(Findings(Good, new FuzzAnswer(500, Problem, [], Refusal("missing"))), one => one.StartsWith("5xx", StringComparison.Ordinal));

    [JudgeFact("ajv")]
    public void A_status_that_is_not_declared_is_objected_to() => Objects("status 418", Good, new FuzzAnswer(418, "", [], ""));

    [JudgeFact("ajv")]
    public void A_header_that_is_not_declared_is_objected_to() =>
        Objects("header X-Other", "{}", new FuzzAnswer(400, Problem, ["X-Other"], Refusal("missing")));

    [JudgeFact("ajv")]
    public void A_media_type_that_is_not_declared_is_objected_to() => Objects("media type", "{}", new FuzzAnswer(400, "text/html", [], "<p>"));

    [JudgeFact("ajv")]
    public void An_error_without_a_problem_document_is_objected_to() => Objects("without a problem document", "{}", new FuzzAnswer(400, "", [], ""));

    [JudgeFact("ajv")]
    public void An_answer_that_the_schema_refuses_is_objected_to() =>
        Objects("outside the document", Good, new FuzzAnswer(200, "application/json", [], """{ "outcome": "splendid" }"""));

    [JudgeFact("ajv")]
    public void A_picture_that_is_no_XML_is_objected_to() => Objects("not XML", Good, new FuzzAnswer(200, "image/svg+xml", [], "<svg>"));

    [JudgeFact("ajv")]
    public void A_request_that_is_taken_though_the_schema_refuses_it_is_objected_to() =>
        Objects("taken, though", """{ "limits": 1 }""", new FuzzAnswer(200, "image/svg+xml", [], "<svg/>"));

    [JudgeFact("ajv")]
    public void A_request_that_is_refused_though_the_schema_takes_it_is_objected_to() =>
        Objects("refused with wrong-type", Good, new FuzzAnswer(400, Problem, [], Refusal("wrong-type")));

    [JudgeFact("ajv")]
    public void A_refusal_for_what_no_schema_can_see_is_passed() => Assert.Empty(Findings(Good, new FuzzAnswer(400, Problem, [], Refusal("unknown-item"))));

    public void Dispose() => validator.Dispose();

    private void Objects(string what, string body, FuzzAnswer answer) =>
        Assert.Contains(Findings(body, answer), one => one.Contains(what, StringComparison.Ordinal));

    private string[] Findings(string body, FuzzAnswer answer) =>
        [
            .. new FuzzJudge(validator).Findings(
                new FuzzRequest(1, Recommend, Recommend.Path, [], "application/json", [])
                {
                    Questions = [new SchemaQuestion(Recommend.BodyPointer("application/json"), body)]
                }, answer)
        ];

    private static string Refusal(string code) => $$"""
        { "type": "/problems/x", "title": "No", "status": 400, "detail": "No.", "errors": { "/limits": [ { "code": "{{code}}", "message": "No." } ] } }
        """;
}
