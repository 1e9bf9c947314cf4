using Evenstep.Service.Http.Authentication;
using Microsoft.Extensions.Configuration;

namespace Evenstep.Service.Tests.Http.Authentication;

public sealed class KeySettingsTests
{
    private static readonly Keyed Good = new("a", "shop") { Scopes = "write read", Origins = "https://a.example https://b.example", Rate = 90 };

    [Fact]
    public void Keys_are_read_and_found_by_their_text()
    {
        using var ring = Read([.. Good.Settings, .. new Keyed("b", "club").Settings]);

        var key = ring.Find(Good.Text)!;
        Assert.Equal(("a", "shop", 90), (key.Name, key.Owner.Name, key.Rate?.PerMinute));
        Assert.True(key.Allows(Scope.Read) && key.Allows(Scope.Write));
        Assert.Equal("https://a.example https://b.example", string.Join(' ', ring.Now.Origins));
        Assert.Equal("club", ring.Find(new Keyed("b", "").Text)!.Owner.Name);
        Assert.Null(ring.Find(Good.Text + " "));
        Assert.Null(ring.Find(""));
    }

    [Fact]
    public void A_key_may_read_and_has_no_limit_unless_it_is_said()
    {
        using var ring = Read(
            [
                .. Good.Settings.Where(
                    setting => setting.Key.EndsWith("Sha256", StringComparison.Ordinal) || setting.Key.EndsWith("Owner", StringComparison.Ordinal))
            ]);

        var key = ring.Find(Good.Text)!;
        Assert.Equal((true, false, true), (key.Allows(Scope.Read), key.Allows(Scope.Write), key.Rate is null));
    }

    [Theory]
    [InlineData("Sha256", "evenstep_secret")]
    [InlineData("Owner", "A Shop")]
    [InlineData("Owner", "-shop")]
    [InlineData("Scopes", "read, wirte")]
    [InlineData("Scopes", ",")]
    [InlineData("Origins", "shop.example")]
    [InlineData("Origins", "https://shop.example/")]
    [InlineData("Origins", "*")]
    [InlineData("Rate", "0")]
    [InlineData("Rate", "60001")]
    [InlineData("Rate", "many")]
    [InlineData("Colour", "blue")]
    public void A_faulty_setting_is_named_with_what_is_allowed(string field, string value)
    {
        var fault = Assert.Throws<InvalidOperationException>(
            () => Read([.. Good.Settings.Where(setting => !setting.Key.EndsWith(field, StringComparison.Ordinal)), ($"Evenstep:Keys:a:{field}", value)]));

        Assert.StartsWith($"Evenstep:Keys:a:{field} ", fault.Message, StringComparison.Ordinal);
        Assert.EndsWith(".", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void All_faults_are_named_at_once()
    {
        var fault = Assert.Throws<InvalidOperationException>(() => Read([("Evenstep:Keys:a:Rate", "0"), ("Evenstep:Keys:b:Scopes", "x")]));

        Assert.All(
            ["a:Sha256", "a:Owner", "a:Rate", "b:Sha256", "b:Owner", "b:Scopes"],
            place => Assert.Contains($"Evenstep:Keys:{place}", fault.Message, StringComparison.Ordinal));
    }

    [Fact]
    public void One_key_twice_is_a_fault()
    {
        var again = Good.Settings.Select(setting => (setting.Key.Replace(":a:", ":b:", StringComparison.Ordinal), setting.Value));

        Assert.Contains("same key", Assert.Throws<InvalidOperationException>(() => Read([.. Good.Settings, .. again])).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(60, 60, "r=60;t=0")]
    [InlineData(60, 59, "r=59;t=1")]
    [InlineData(60, 0, "r=0;t=60")]
    [InlineData(7, 5, "r=5;t=18")]
    [InlineData(60_000, 59_999, "r=59999;t=1")]
    public void What_is_left_and_when_it_is_whole_again_is_said(int perMinute, int left, string said) =>
        Assert.Equal($"\"key\";{said}", RateHeaders.LimitOf(perMinute, left));

    [Theory]
    [InlineData(1)]
    [InlineData(600)]
    [InlineData(700)]
    [InlineData(KeyRate.MostPerMinute)]
    public void A_rate_allows_as_many_at_once_as_in_a_minute(int perMinute)
    {
        using var rate = new KeyRate(perMinute);
        Assert.Equal(perMinute, rate.Left);

        var used = 0;
        while (used <= 2 * perMinute && rate.Use() is null)
        {
            used++;
        }

        // A little may have been refilled meanwhile.
        Assert.InRange(used, perMinute, perMinute + (perMinute / 10));
        Assert.True(rate.Use() > TimeSpan.Zero || perMinute > 600);
    }

    private static KeyRing Read((string Key, string Value)[] settings) => new(KeySettings.Read(
        new ConfigurationBuilder().AddInMemoryCollection(settings.Select(setting => KeyValuePair.Create(setting.Key, (string?)setting.Value))).Build()));
}
