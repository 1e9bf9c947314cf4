using Microsoft.Extensions.Caching.Hybrid;
using Microsoft.Extensions.Caching.Memory;

namespace Evenstep.Service.Answering.Caching;

/// <summary>The cache of answers, bounded in memory.</summary>
internal static class CachingSetup
{
    public const string MegabytesKey = "Evenstep:CacheMegabytes";

    private const int DefaultMegabytes = 32;
    private const int MostMegabytes = 1_000_000;
    private const long BytesOfMegabyte = 1024 * 1024;

    /// <summary>Longer than any answer: the longest list thousands of items with a sentence each.</summary>
    private const long MostAnswerBytes = 8 * BytesOfMegabyte;

    /// <summary>An answer never goes stale, for its key names all that decides it: this only clears out what nobody asks for.</summary>
    private static readonly TimeSpan Expiration = TimeSpan.FromDays(1);

    public static void AddAnswerCache(this IServiceCollection services, IConfiguration configuration)
    {
        services.Configure<MemoryCacheOptions>(memory => memory.SizeLimit = MegabytesOf(configuration) * BytesOfMegabyte / SizeOfAnswer.BytesCountedAsOne);
        services.AddHybridCache(cache =>
        {
            cache.MaximumPayloadBytes = MostAnswerBytes / SizeOfAnswer.BytesCountedAsOne;
            cache.DefaultEntryOptions = new HybridCacheEntryOptions { Expiration = Expiration, LocalCacheExpiration = Expiration };
        }).AddSerializer<FinishedAnswer, SizeOfAnswer>();
        services.AddSingleton<AnswerCache>();
    }

    private static int MegabytesOf(IConfiguration configuration)
    {
        var megabytes = configuration.GetValue(MegabytesKey, DefaultMegabytes);
        return megabytes is >= 0 and <= MostMegabytes
            ? megabytes
            : throw new InvalidOperationException($"{MegabytesKey} must be a whole number from 0 to {MostMegabytes}.");
    }
}
