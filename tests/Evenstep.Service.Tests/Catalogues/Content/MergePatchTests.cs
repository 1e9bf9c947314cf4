using System.Text.Json;
using System.Text.Json.Nodes;
using Evenstep.Service.Catalogues;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Tests.Catalogues.Content;

public sealed class MergePatchTests
{
    /// <summary>The test cases of RFC 7396, appendix A: original, patch, result.</summary>
    [Theory]
    [InlineData("""{"a":"b"}""", """{"a":"c"}""", """{"a":"c"}""")]
    [InlineData("""{"a":"b"}""", """{"b":"c"}""", """{"a":"b","b":"c"}""")]
    [InlineData("""{"a":"b"}""", """{"a":null}""", """{}""")]
    [InlineData("""{"a":"b","b":"c"}""", """{"a":null}""", """{"b":"c"}""")]
    [InlineData("""{"a":["b"]}""", """{"a":"c"}""", """{"a":"c"}""")]
    [InlineData("""{"a":"c"}""", """{"a":["b"]}""", """{"a":["b"]}""")]
    [InlineData("""{"a":{"b":"c"}}""", """{"a":{"b":"d","c":null}}""", """{"a":{"b":"d"}}""")]
    [InlineData("""{"a":[{"b":"c"}]}""", """{"a":[1]}""", """{"a":[1]}""")]
    [InlineData("""["a","b"]""", """["c","d"]""", """["c","d"]""")]
    [InlineData("""{"a":"b"}""", """["c"]""", """["c"]""")]
    [InlineData("""{"a":"foo"}""", "null", "null")]
    [InlineData("""{"a":"foo"}""", "\"bar\"", "\"bar\"")]
    [InlineData("""{"e":null}""", """{"a":1}""", """{"e":null,"a":1}""")]
    [InlineData("[1,2]", """{"a":"b","c":null}""", """{"a":"b"}""")]
    [InlineData("{}", """{"a":{"bb":{"ccc":null}}}""", """{"a":{"bb":{}}}""")]
    public void It_does_what_the_standard_shows(string original, string patch, string result)
    {
        var patched = MergePatch.Apply(JsonNode.Parse(original), JsonElement.Parse(patch));

        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(result), patched), patched?.ToJsonString());
    }

    [Theory]
    [InlineData("""{ "a": 1, "a": 2 }""", "/a duplicate")]
    [InlineData("""{ "a": { "b": 1, "c": 1, "b": null } }""", "/a/b duplicate")]
    [InlineData("""{ "a": { "\ud800": 1 } }""", "/a invalid-text")]
    [InlineData("""{ "a": { "b": 1 }, "b": 1 }""", "")]
    [InlineData("[]", "")]
    public void Names_that_leave_in_doubt_what_is_meant_are_reported(string patch, string fault)
    {
        var faults = new Faults();

        Assert.Equal(fault.Length == 0, MergePatch.Check(JsonElement.Parse(patch), RequestPointer.Root, faults));
        Assert.Equal(fault, string.Join('|', faults.Shown.Select(one => $"{one.Pointer} {Words<FaultCode>.Of(one.Code)}")));
    }
}
