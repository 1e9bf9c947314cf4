using System.Collections;
using System.Collections.Immutable;

namespace Evenstep.Service.Answering.Kits;

/// <summary>A list whose entries are made each time that they are asked for, and not kept: a kit may have thirty thousand views.</summary>
/// <typeparam name="TFrom">What an entry is made from.</typeparam>
/// <typeparam name="TTo">An entry.</typeparam>
/// <param name="all">What the entries are made from.</param>
/// <param name="write">Makes an entry; the same from the same.</param>
internal sealed class Written<TFrom, TTo>(ImmutableArray<TFrom> all, Func<TFrom, TTo> write) : IReadOnlyList<TTo>
{
    public int Count => all.Length;

    public TTo this[int index] => write(all[index]);

    public IEnumerator<TTo> GetEnumerator() => all.Select(write).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
