namespace Evenstep.Service.Http.Authentication;

/// <summary>The keys that open the service now. They may change while it runs: a set takes the place of another as a whole.</summary>
internal sealed class KeyRing : IDisposable
{
    private readonly List<KeyRate> rates = [];
    private volatile KeySet now = new([]);

    /// <param name="first">The keys at start.</param>
    /// <param name="asks">Whether a key is needed though there is none yet.</param>
    public KeyRing(KeySet first, bool asks = false)
    {
        Renew(first);
        Asks |= asks;
    }

    public KeySet Now => now;

    /// <summary>
    /// Whether a key is needed. Once there has been one it is, to the end of the process: a service does not become open
    /// because its last key was taken away.
    /// </summary>
    public bool Asks { get; private set; }

    /// <summary>The key of this text, or null.</summary>
    public ApiKey? Find(string text) => now.Find(text);

    /// <summary>
    /// Puts other keys in place of those that there are. What is used up of a rate stays so, unless the rate is another.
    /// Only one caller at a time may renew.
    /// </summary>
    public void Renew(KeySet next)
    {
        var before = now;
        KeySet renewed = new([.. next.Keys.Select(key => key.After(before.Heir(key)))]);
        rates.AddRange(renewed.Keys.Select(key => key.Rate).OfType<KeyRate>().Except(rates));
        Asks |= !renewed.Keys.IsEmpty;
        now = renewed;
    }

    /// <summary>The rates of keys that are gone end only here: somebody who came with one may still be served.</summary>
    public void Dispose() => rates.ForEach(rate => rate.Dispose());
}
