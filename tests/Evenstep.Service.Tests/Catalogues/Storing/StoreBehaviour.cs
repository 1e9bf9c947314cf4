using System.Text;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Http.Authentication;

namespace Evenstep.Service.Tests.Catalogues.Storing;

/// <summary>What every store of catalogues does, whatever it keeps them in.</summary>
internal static class StoreBehaviour
{
    private static readonly Owner Somebody = new("somebody");

    private static readonly Dictionary<string, Func<CatalogueStore, Task>> ByName = new()
    {
        ["What is stored is found, and only by its owner"] = WhatIsStoredIsFoundAsync,
        ["Nothing unseen is overwritten"] = NothingUnseenIsOverwrittenAsync,
        ["Every change has a revision of its own"] = EveryChangeHasARevisionOfItsOwnAsync,
        ["An empty store has a revision"] = AnEmptyStoreHasARevisionAsync,
        ["Of many changes at once none is lost"] = OfManyAtOnceNoneIsLostAsync,
        ["Preparing twice changes nothing"] = PreparingTwiceChangesNothingAsync,
    };

    public static TheoryData<string> Names => [.. ByName.Keys];

    /// <summary>Checks one thing on a store that is prepared and empty.</summary>
    public static Task CheckAsync(string name, CatalogueStore store) => ByName[name](store);

    private static async Task WhatIsStoredIsFoundAsync(CatalogueStore store)
    {
        var wares = Wares.Catalogue();

        var revision = await store.ReplaceAsync(Wares.Key, null, wares, CancellationToken.None);

        var found = await store.FindAsync(Wares.Key, null, CancellationToken.None);
        Assert.Equal((wares.Version, revision), (found!.Version, found.Revision));
        Assert.Equal(Text(wares.Content), Text(found.Content!.Value));
        Assert.Null((await store.FindAsync(Wares.Key, wares.Version, CancellationToken.None))!.Content);
        Assert.Null(await store.FindAsync(Wares.Key with { Id = "other" }, null, CancellationToken.None));
        Assert.Null(await store.FindAsync(Wares.Key with { Owner = Somebody }, null, CancellationToken.None));
    }

    private static async Task NothingUnseenIsOverwrittenAsync(CatalogueStore store)
    {
        var (first, second, third) = (Wares.Catalogue(1), Wares.Catalogue(2), Wares.Catalogue(3));
        await store.ReplaceAsync(Wares.Key, null, first, CancellationToken.None);
        await store.ReplaceAsync(Wares.Key, first.Version, second, CancellationToken.None);
        var revision = await store.RevisionAsync(CancellationToken.None);

        Assert.Null(await store.ReplaceAsync(Wares.Key, null, third, CancellationToken.None));
        Assert.Null(await store.ReplaceAsync(Wares.Key, first.Version, third, CancellationToken.None));
        Assert.Null(await store.ReplaceAsync(Wares.Key, first.Version, null, CancellationToken.None));
        Assert.Null(await store.ReplaceAsync(Wares.Key with { Owner = Somebody }, second.Version, third, CancellationToken.None));

        Assert.Equal(revision, await store.RevisionAsync(CancellationToken.None));
        Assert.Equal(second.Version, (await store.FindAsync(Wares.Key, null, CancellationToken.None))!.Version);
    }

    private static async Task EveryChangeHasARevisionOfItsOwnAsync(CatalogueStore store)
    {
        var (first, second) = (Wares.Catalogue(1), Wares.Catalogue(2));
        var theirs = Wares.Key with { Owner = Somebody };
        var before = await store.RevisionAsync(CancellationToken.None);

        Assert.Equal(before + 1, await store.ReplaceAsync(Wares.Key, null, first, CancellationToken.None));
        Assert.Equal(before + 2, await store.ReplaceAsync(theirs, null, first, CancellationToken.None));
        Assert.Equal(before + 3, await store.ReplaceAsync(Wares.Key, first.Version, second, CancellationToken.None));
        Assert.Equal(before + 4, await store.ReplaceAsync(Wares.Key, second.Version, null, CancellationToken.None));

        var left = await store.ListAsync(CancellationToken.None);
        Assert.Equal((before + 4, before + 4), (left.Revision, await store.RevisionAsync(CancellationToken.None)));
        Assert.Equal(new StoredVersion(theirs, first.Version!, before + 2), Assert.Single(left.Catalogues));
    }

    private static async Task AnEmptyStoreHasARevisionAsync(CatalogueStore store)
    {
        var nothing = await store.ListAsync(CancellationToken.None);

        Assert.Empty(nothing.Catalogues);
        Assert.Equal(nothing.Revision, await store.RevisionAsync(CancellationToken.None));
    }

    /// <summary>Forty writers raise one price by one each, as the desk does it: each tries again until it replaces what it saw.</summary>
    private static async Task OfManyAtOnceNoneIsLostAsync(CatalogueStore store)
    {
        const int Writers = 40;
        await store.ReplaceAsync(Wares.Key, null, Wares.Catalogue(0), CancellationToken.None);

        await Task.WhenAll(Enumerable.Range(0, Writers).Select(_ => Task.Run(() => RaiseAsync(store))));

        var stored = await store.FindAsync(Wares.Key, null, CancellationToken.None);
        Assert.Equal(Text(Wares.Catalogue(Writers).Content), Text(stored!.Content!.Value));
    }

    private static async Task PreparingTwiceChangesNothingAsync(CatalogueStore store)
    {
        await store.ReplaceAsync(Wares.Key, null, Wares.Catalogue(), CancellationToken.None);

        await store.PrepareAsync(CancellationToken.None);

        Assert.Single((await store.ListAsync(CancellationToken.None)).Catalogues);
    }

    private static async Task RaiseAsync(CatalogueStore store)
    {
        while (true)
        {
            var seen = await store.FindAsync(Wares.Key, null, CancellationToken.None);
            var price = Wares.Read(Text(seen!.Content!.Value)).Items["e-25"].Price;
            if (await store.ReplaceAsync(Wares.Key, seen.Version, Wares.Catalogue(price + 1), CancellationToken.None) is not null)
            {
                return;
            }
        }
    }

    private static string Text(ReadOnlyMemory<byte> content) => Encoding.UTF8.GetString(content.Span);
}
