using System.Buffers;
using System.Numerics;
using System.Runtime.CompilerServices;
using Evenstep.Planning.Budgets;

namespace Evenstep.Planning.Solving.Search;

/// <summary>Arrays that a search uses and gives back all at once: most are a few kilobytes, and every search needs dozens.</summary>
internal sealed class Lending(WorkBudget budget) : IDisposable
{
    /// <summary>The pool keeps what it is given, of every length and type; what is larger than this is left to the garbage collector.</summary>
    private const long MostBytesPooled = 64 * 1024;

    private readonly List<Action> returns = [];
    private long held;

    /// <summary>An array of at least that length; so much of it is clear.</summary>
    /// <exception cref="WorkEndedException">There is not so much memory left.</exception>
    public T[] Lend<T>(int length)
    {
        Hold<T>(length);
        var array = Rent<T>(length);
        array.AsSpan(0, length).Clear();
        returns.Add(() => Return(array));
        return array;
    }

    /// <summary>An array of at least that length; it may hold anything.</summary>
    public static T[] Rent<T>(int length) => BytesOf<T>(length) > MostBytesPooled ? GC.AllocateUninitializedArray<T>(length) : ArrayPool<T>.Shared.Rent(length);

    /// <summary>Gives a rented array back.</summary>
    public static void Return<T>(T[] array)
    {
        if (BytesOf<T>(array.Length) <= MostBytesPooled)
        {
            ArrayPool<T>.Shared.Return(array);
        }
    }

    /// <summary>Counts an array that somebody else rents, until all is given back.</summary>
    /// <exception cref="WorkEndedException">There is not so much memory left.</exception>
    public void Hold<T>(int length)
    {
        var bytes = BytesOf<T>(length);
        budget.Hold(bytes);
        held += bytes;
    }

    /// <summary>What an array takes; the pool rounds lengths up to a power of two.</summary>
    public static long BytesOf<T>(int length) => (long)BitOperations.RoundUpToPowerOf2((uint)Math.Max(16, length)) * Unsafe.SizeOf<T>();

    /// <summary>Gives something else back as well.</summary>
    public void Add(Action giveBack) => returns.Add(giveBack);

    /// <summary>Gives all back: none of it must be used any more.</summary>
    public void Dispose()
    {
        returns.ForEach(giveBack => giveBack());
        returns.Clear();
        budget.Release(held);
        held = 0;
    }
}
