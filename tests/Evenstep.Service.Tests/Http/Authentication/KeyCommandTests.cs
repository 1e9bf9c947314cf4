using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using Evenstep.Service.Http.Authentication;

namespace Evenstep.Service.Tests.Http.Authentication;

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

        Assert.Equal(2, KeyCommand.Run(["new", .. args, "--Evenstep:DataFolder", data.Path], TimeProvider.System, words));

        Assert.Contains(fault, words.ToString(), StringComparison.OrdinalIgnoreCase);
        Assert.Contains("--scopes   read", words.ToString(), StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(data.Path, "keys.json")));
    }

    [Fact]
    public void The_list_tells_of_every_key_and_shows_none()
    {
        Assert.StartsWith("There are no keys in ", Do(data, "list"), StringComparison.Ordinal);
        var (first, second) =
            (Make("--owner", "shop", "--scopes", "read,write", "--rate", "600"), Make("--owner", "club", "--origins", "https://club.example"));

        var list = Do(data, "list");

        Assert.Matches(@"  key-[0-9a-f]{8}: owner shop; may `read`, `write`; 600 requests a minute; for servers; made \d{4}-\d\d-\d\d \d\d:\d\d UTC\n", list);
        Assert.Matches(@"  key-[0-9a-f]{8}: owner club; may `read`; as often as one likes; for pages of https://club\.example; made ", list);
        Assert.DoesNotContain(first[20..], list, StringComparison.Ordinal);
        Assert.DoesNotContain(second[20..], list, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_key_is_revoked_by_its_name_or_its_hash_and_others_stay(bool byHash)
    {
        var (first, second) = (HashOf(Make("--owner", "shop")), HashOf(Make("--owner", "club")));

        Assert.Contains($"key-{first[..8]} is no key any more", Do(data, "revoke", byHash ? first[..12] : $"key-{first[..8]}"), StringComparison.Ordinal);

        Assert.DoesNotContain(first[..8], Do(data, "list"), StringComparison.Ordinal);
        Assert.Contains(second[..8], Do(data, "list"), StringComparison.Ordinal);
        Assert.True(
            OperatingSystem.IsWindows() || File.GetUnixFileMode(Path.Combine(data.Path, "keys.json")) == (UnixFileMode.UserRead | UnixFileMode.UserWrite));
    }

    [Theory]
    [InlineData("No key is called \"key-0\"", "revoke", "key-0")]
    [InlineData("Say which key", "revoke")]
    [InlineData("Say which key", "revoke", "a", "b")]
    [InlineData("--owner is not known", "list", "--owner", "shop")]
    [InlineData("\"all\" is one word too many", "list", "all")]
    [InlineData("\"renew\" is nothing that can be done", "renew")]
    [InlineData("Say what to do with keys")]
    public void What_cannot_be_done_is_said_and_changes_nothing(string fault, params string[] args)
    {
        Make("--owner", "shop");
        var before = File.ReadAllText(Path.Combine(data.Path, "keys.json"));
        using var words = new StringWriter();

        Assert.Equal(2, KeyCommand.Run(args.Length == 0 ? [] : [.. args, "--Evenstep:DataFolder", data.Path], TimeProvider.System, words));

        Assert.Contains(fault, words.ToString(), StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(Path.Combine(data.Path, "keys.json")));
    }

    [Theory]
    [InlineData("new", "--owner", "shop")]
    [InlineData("list")]
    [InlineData("revoke", "key-12345678")]
    public void A_faulty_file_is_reported_and_not_changed(params string[] args)
    {
        var path = Path.Combine(data.Path, "keys.json");
        File.WriteAllText(path, "{ oh");
        using var words = new StringWriter();

        Assert.Equal(1, KeyCommand.Run([.. args, "--Evenstep:DataFolder", data.Path], TimeProvider.System, words));

        Assert.StartsWith("Nothing was changed. ", words.ToString(), StringComparison.Ordinal);
        Assert.Equal("{ oh", File.ReadAllText(path));
    }

    /// <summary>Makes a key in a folder of data, and gives it back.</summary>
    internal static string Make(DataFolder data, params string[] args) => Key().Match(Do(data, ["new", .. args])).Value;

    /// <summary>Has the command do something that goes well.</summary>
    internal static string Do(DataFolder data, params string[] args)
    {
        using var words = new StringWriter { NewLine = "\n" };
        Assert.Equal(0, KeyCommand.Run([.. args, "--Evenstep:DataFolder", data.Path], TimeProvider.System, words));
        return words.ToString();
    }

    private string Make(params string[] args) => Make(data, args);

    private static string HashOf(string key) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(key)));

    private static async Task<int> StatusAsync(Service service, string key, HttpMethod method) =>
        (await service.SendAsync(method, "/v1/catalogues/" + (method == HttpMethod.Get ? "demo" : "none"), headers: ("Authorization", $"Bearer {key}"))).Status;

    [GeneratedRegex("evenstep_[A-Za-z0-9_-]{43}")]
    private static partial Regex Key();
}
