using System.Text.RegularExpressions;
using Evenstep.Service.Keys;

namespace Evenstep.Service.Tests.Keys;

public sealed partial class KeyCommandTests : IDisposable
{
    private readonly DataFolder data = new();

    public void Dispose() => data.Dispose();

    [Fact]
    public async Task A_key_that_is_made_lets_its_holder_in()
    {
        var (first, second) = (Make("--owner", "shop", "--scopes", "read,write", "--rate", "600"), Make("--owner=club"));

        await using var service = new Service(data);

        Assert.Equal(200, await StatusAsync(service, first, HttpMethod.Get));
        Assert.Equal(200, await StatusAsync(service, second, HttpMethod.Get));
        Assert.Equal(404, await StatusAsync(service, first, HttpMethod.Delete));
        Assert.Equal(403, await StatusAsync(service, second, HttpMethod.Delete));
        Assert.Equal(401, await StatusAsync(service, first + "x", HttpMethod.Get));
    }

    [Fact]
    public void Only_the_hash_is_kept_and_only_for_whoever_runs_the_service()
    {
        var key = Make("--owner", "shop");
        var path = Path.Combine(data.Path, "keys.json");

        Assert.DoesNotContain(key[20..], File.ReadAllText(path), StringComparison.Ordinal);
        Assert.True(OperatingSystem.IsWindows() || File.GetUnixFileMode(path) == (UnixFileMode.UserRead | UnixFileMode.UserWrite));
    }

    [Theory]
    [InlineData("--owner is missing")]
    [InlineData("--owner is \"A Shop\"", "--owner", "A Shop")]
    [InlineData("--scopes is \"reed\"", "--owner", "shop", "--scopes", "reed")]
    [InlineData("--rate is \"x\"", "--owner", "shop", "--rate", "x")]
    [InlineData("--origins is \"shop.example\"", "--owner", "shop", "--origins", "shop.example")]
    [InlineData("--onwer is not known. Did you mean --owner?", "--onwer", "shop")]
    [InlineData("Every argument is given once", "--owner", "shop", "--rate")]
    [InlineData("Every argument is given once", "shop")]
    [InlineData("Every argument is given once", "--owner", "shop", "--owner", "club")]
    public void What_is_asked_for_wrongly_is_named_and_makes_no_key(string fault, params string[] args)
    {
        using var words = new StringWriter();

        Assert.Equal(2, KeyCommand.Run([.. args, "--Evenstep:DataFolder", data.Path], words));

        Assert.Contains(fault, words.ToString(), StringComparison.OrdinalIgnoreCase);
        Assert.Contains("--scopes   read", words.ToString(), StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(data.Path, "keys.json")));
    }

    private string Make(params string[] args)
    {
        using var words = new StringWriter();
        Assert.Equal(0, KeyCommand.Run([.. args, "--Evenstep:DataFolder", data.Path], words));
        return Key().Match(words.ToString()).Value;
    }

    private static async Task<int> StatusAsync(Service service, string key, HttpMethod method) =>
        (await service.SendAsync(method, "/v1/catalogues/" + (method == HttpMethod.Get ? "demo" : "none"), headers: ("Authorization", $"Bearer {key}"))).Status;

    [GeneratedRegex("evenstep_[A-Za-z0-9_-]{43}")]
    private static partial Regex Key();
}
