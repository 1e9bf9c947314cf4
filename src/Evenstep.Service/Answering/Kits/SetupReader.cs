using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Answering.Kits;

/// <summary>Understands what a request says of the observer's situation.</summary>
internal static class SetupReader
{
    public static Setup Read(KitRequest request, CatalogueSnapshot snapshot, Faults faults)
    {
        var observer = ObserverOf(request.Observer);
        var catalogue = CatalogueReference.Read(request.Catalogue, snapshot, faults);
        var telescopes = new TelescopeReader(request, observer, catalogue, faults).ReadAll();
        return new Setup
        {
            Telescopes = telescopes,
            Observer = observer,
            SeeingArcsec = request.Site?.SeeingArcsec ?? PowerRange.UsualSeeingArcsec,
            Owned = OwnedReader.Read(request, catalogue, faults),
            Catalogue = catalogue,
        };
    }

    /// <summary>The demands to frame something, each of a telescope of the request or of any.</summary>
    /// <param name="framings">As the request says them; null for none.</param>
    /// <param name="setup">What the request says of the observer's situation.</param>
    /// <param name="pointer">Where the demands stand.</param>
    /// <param name="faults">What is wrong.</param>
    public static ImmutableArray<FramingDemand> ReadFramings(IReadOnlyList<FramingRequest?>? framings, Setup setup, RequestPointer pointer, Faults faults)
    {
        var demands = ImmutableArray.CreateBuilder<FramingDemand>();
        foreach (var (i, framing) in (framings ?? []).Index())
        {
            if (framing?.WidthDeg is { } width)
            {
                demands.Add(new FramingDemand(framing.Name, width, IndexOf(framing.Telescope, setup.Telescopes, pointer.At(i), faults)));
            }
        }

        return demands.ToImmutable();
    }

    private static int? IndexOf(string? telescope, ImmutableArray<NamedTelescope?> telescopes, RequestPointer pointer, Faults faults)
    {
        if (telescope is null)
        {
            return null;
        }

        var known = telescopes.OfType<NamedTelescope>().Select(one => one.Name).ToList();
        var index = telescopes.IndexOf(telescopes.FirstOrDefault(one => one?.Name == telescope) ?? telescopes.FirstOrDefault(one => one?.Id == telescope));
        if (index >= 0 && telescopes[index] is not null)
        {
            return index;
        }

        // Where no telescope could be read, that has been said, and there is none to name.
        if (known.Count == 0)
        {
            return null;
        }

        faults.Add(
            pointer.To(nameof(FramingRequest.Telescope)),
            FaultCode.UnknownTelescope,
            () => ErrorMessage.Of("error/no-telescope-in-request", ("telescope", ErrorText.Quoted(telescope)), ("known", ErrorText.List(known))));
        return null;
    }

    private static Observer ObserverOf(ObserverRequest? request) => request is null ? new Observer() : new Observer
    {
        Age = request.Age,
        PupilMm = request.PupilMm,
        WearsSpectacles = request.WearsSpectacles ?? false,
        AstigmatismDioptres = request.AstigmatismDioptres,
        LeastEyeReliefMm = request.LeastEyeReliefMm,
        Observes = [.. (request.Observes ?? []).OfType<Interest>().Distinct()],
    };
}
