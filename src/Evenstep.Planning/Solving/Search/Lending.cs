using System.Buffers;

namespace Evenstep.Planning.Solving.Search;

/// <summary>Arrays that a search uses and gives back all at once: most are a few kilobytes, and every search needs dozens.</summary>
internal sealed class Lending : IDisposable
{
    private readonly List<Action> returns = [];

    /// <summary>An array of at least that length; so much of it is clear.</summary>
    public T[] Lend<T>(int length)
    {
        var array = ArrayPool<T>.Shared.Rent(length);
        array.AsSpan(0, length).Clear();
        returns.Add(() => ArrayPool<T>.Shared.Return(array));
        return array;
    }

    /// <summary>Gives something else back as well.</summary>
    public void Add(Action giveBack) => returns.Add(giveBack);

    /// <summary>Gives all back: none of it must be used any more.</summary>
    public void Dispose()
    {
        returns.ForEach(giveBack => giveBack());
        returns.Clear();
    }
}
