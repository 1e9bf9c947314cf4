using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;

namespace Evenstep.Service.Http.Authentication;

/// <summary>All keys that were given out, as they are at one moment.</summary>
internal sealed class KeySet(ImmutableArray<ApiKey> keys)
{
    public ImmutableArray<ApiKey> Keys { get; } = keys;

    /// <summary>Every web origin whose pages may use some key.</summary>
    public ImmutableArray<string> Origins { get; } = [.. keys.SelectMany(key => key.Origins).Distinct(StringComparer.Ordinal)];

    /// <summary>The key of this text, or null. How long the search takes tells nothing of any key.</summary>
    public ApiKey? Find(string text)
    {
        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(Encoding.UTF8.GetBytes(text), hash);
        ApiKey? found = null;
        foreach (var key in Keys)
        {
            found = CryptographicOperations.FixedTimeEquals(hash, key.Hash.AsSpan()) ? key : found;
        }

        return found;
    }

    /// <summary>What became of a key that an earlier set held, or null if it is gone.</summary>
    public ApiKey? Heir(ApiKey key) => Keys.FirstOrDefault(one => one.Hash.AsSpan().SequenceEqual(key.Hash.AsSpan()));
}
