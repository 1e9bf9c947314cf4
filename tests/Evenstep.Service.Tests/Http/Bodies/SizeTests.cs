using System.Net.Http.Headers;

namespace Evenstep.Service.Tests.Http.Bodies;

/// <summary>The size of a body, to the byte, whether or not it says it beforehand.</summary>
public sealed class SizeTests(Service service) : IClassFixture<Service>
{
    private const int MostBytes = 2 * 1024 * 1024;

    [Theory]
    [InlineData(MostBytes, false, 200)]
    [InlineData(MostBytes, true, 200)]
    [InlineData(MostBytes + 1, false, 413)]
    [InlineData(MostBytes + 1, true, 413)]
    [InlineData(20 * MostBytes, true, 413)]
    public async Task Two_MiB_are_taken_and_not_a_byte_more(int bytes, bool inPieces, int status)
    {
        using var client = service.CreateClient();
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri("/v1/assessments", UriKind.Relative));
        request.Content = new ByteArrayContent(Body(bytes));
        request.Content.Headers.ContentType = MediaTypeHeaderValue.Parse("application/json");
        request.Headers.TransferEncodingChunked = inPieces;

        using var response = await client.SendAsync(request);

        Assert.Equal(status, (await Answer.OfAsync(response)).Status);
    }

    private static byte[] Body(int bytes) =>
        System.Text.Encoding.UTF8.GetBytes("""{ "telescopes": [ { "apertureMm": 203, "focalLengthMm": 1218, "focuserBarrel": "2in" } ] }""".PadRight(bytes));
}
