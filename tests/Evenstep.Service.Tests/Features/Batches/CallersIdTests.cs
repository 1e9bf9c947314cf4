using System.Text;
using Evenstep.Service.Features.Batches;

namespace Evenstep.Service.Tests.Features.Batches;

public sealed class CallersIdTests
{
    [Theory]
    [InlineData("""{"id":"a","x":1}""", "a", """{"x":1}""")]
    [InlineData("""{ "id" : "a" , "x": 1 }""", "a", """{ "x": 1 }""")]
    [InlineData("""{"x":1,"id":"a"}""", "a", """{"x":1}""")]
    [InlineData("""{"x":[{"id":"no"}],"id":"a","y":2}""", "a", """{"x":[{"id":"no"}],"y":2}""")]
    [InlineData("""{ "x": 1 , "id": "a" }""", "a", """{ "x": 1 }""")]
    [InlineData("""{"id":"a"}""", "a", "{}")]
    [InlineData("""{"\u0069d":"\u0061\"","x":1}""", "a\"", """{"x":1}""")]
    public void What_is_left_is_the_request(string line, string id, string request)
    {
        var parts = CallersId.Cut(Encoding.UTF8.GetBytes(line))!;

        Assert.Equal((id, request), (parts.Id, Encoding.UTF8.GetString(parts.Request.Span)));
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("""{"x":{"id":"a"}}""")]
    [InlineData("""{"id":1}""")]
    [InlineData("""{"id":null}""")]
    [InlineData("""{"id":""}""")]
    [InlineData("""{"id":"\ud800"}""")]
    [InlineData("""[{"id":"a"}]""")]
    [InlineData("""{"x":tru,"id":"a"}""")]
    [InlineData("nothing")]
    [InlineData("")]
    public void Without_an_id_that_is_allowed_there_is_nothing_to_cut(string line) => Assert.Null(CallersId.Cut(Encoding.UTF8.GetBytes(line)));
}
