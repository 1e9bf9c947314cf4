namespace Evenstep.Service.Http.Authentication;

/// <summary>
/// Reads the key file again when it has changed. All of it counts or nothing: while it is faulty, the keys that were read
/// before stay, and the log says so.
/// </summary>
internal sealed partial class KeyWatch(KeySource source, byte[]? atStart, KeyRing ring, ILogger<KeyWatch> logger) : BackgroundService
{
    /// <summary>A file so small is read rather than watched: that works on every kind of disk.</summary>
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(0.5);

    /// <summary>Of the file, as it was looked at last; empty if it could not be read.</summary>
    private byte[]? seen = atStart;

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Pause);
        while (await timer.WaitForNextTickAsync(stoppingToken))
        {
            Look();
        }
    }

    private void Look()
    {
        try
        {
            var content = source.Content();
            if (!IsSeen(content))
            {
                seen = content;
                Take(source.Read(content));
            }
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            if (!IsSeen([]))
            {
                seen = [];
                LogFaulty(source.Path, exception.Message);
            }
        }
        catch (InvalidOperationException exception)
        {
            LogFaulty(source.Path, exception.Message);
        }
    }

    private bool IsSeen(byte[]? content) => content is null ? seen is null : seen is not null && content.AsSpan().SequenceEqual(seen);

    private void Take(KeySet next)
    {
        var before = ring.Now;
        ring.Renew(next);
        LogRenewed(source.Path, ring.Now.Keys.Length, NamesOf(ring.Now, before), NamesOf(before, ring.Now));
        if (ring.Now.Keys.IsEmpty)
        {
            LogNone();
        }
    }

    private static string NamesOf(KeySet those, KeySet notThese) =>
        string.Join(", ", those.Keys.Where(key => notThese.Heir(key) is null).Select(key => key.Name).DefaultIfEmpty("none"));

    [LoggerMessage(
        LogLevel.Error,
        "{Path} has changed, and cannot be used: the keys that were read before stay in force, and a key taken out of it is NOT refused yet. {Fault}")]
    private partial void LogFaulty(string path, string fault);

    [LoggerMessage(LogLevel.Information, "{Path} has changed: requests need one of {Count} keys. New: {New}. Gone: {Gone}.")]
    private partial void LogRenewed(string path, int count, string @new, string gone);

    [LoggerMessage(LogLevel.Warning, "No key is left: nobody is answered until one is made with `key new`.")]
    private partial void LogNone();
}
