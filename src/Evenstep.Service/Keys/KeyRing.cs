using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;

namespace Evenstep.Service.Keys;

/// <summary>All keys that were given out, as they were at start.</summary>
internal sealed class KeyRing(ImmutableArray<ApiKey> keys) : IDisposable
{
    /// <summary>Without keys the service asks for none.</summary>
    public bool IsEmpty => keys.IsEmpty;

    public int Count => keys.Length;

    /// <summary>Every web origin whose pages may use some key.</summary>
    public ImmutableArray<string> Origins { get; } = [.. keys.SelectMany(key => key.Origins).Distinct(StringComparer.Ordinal)];

    /// <summary>The key of this text, or null. How long the search takes tells nothing of any key.</summary>
    public ApiKey? Find(string text)
    {
        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(Encoding.UTF8.GetBytes(text), hash);
        ApiKey? found = null;
        foreach (var key in keys)
        {
            found = CryptographicOperations.FixedTimeEquals(hash, key.Hash.AsSpan()) ? key : found;
        }

        return found;
    }

    public void Dispose()
    {
        foreach (var key in keys)
        {
            key.Dispose();
        }
    }
}
