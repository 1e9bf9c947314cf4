using System.Security.Cryptography;
using System.Text;

namespace Evenstep.Service.Tests.Http.Authentication;

/// <summary>A key of a test, with the settings that make the service know it.</summary>
internal sealed record Keyed(string Name, string Owner)
{
    public string Scopes { get; init; } = "read,write";

    public int? Rate { get; init; }

    public string Origins { get; init; } = "";

    public string Text => $"evenstep_test-{Name}";

    public (string Name, string Value) Header => ("Authorization", $"Bearer {Text}");

    public (string Key, string Value)[] Settings =>
    [
        ($"Evenstep:Keys:{Name}:Sha256", Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(Text)))),
        ($"Evenstep:Keys:{Name}:Owner", Owner),
        ($"Evenstep:Keys:{Name}:Scopes", Scopes),
        ($"Evenstep:Keys:{Name}:Origins", Origins),
        ($"Evenstep:Keys:{Name}:Rate", Rate is { } rate ? FormattableString.Invariant($"{rate}") : ""),
    ];

    /// <summary>A service that knows keys.</summary>
    public static Service ServiceWith(params Keyed[] keys) => new(null, [.. keys.SelectMany(key => key.Settings)]);
}
