using System.Collections.Immutable;
using System.Globalization;
using Evenstep.Planning.Optics;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Kits;

/// <summary>Understands a request's telescopes: which they are, what they are called, what powers they can use.</summary>
internal sealed class TelescopeReader(KitRequest request, Observer observer, Catalogue? catalogue, Faults faults)
{
    private readonly RequestPointer pointer = RequestPointer.Root.To(nameof(KitRequest.Telescopes));

    public ImmutableArray<NamedTelescope?> ReadAll()
    {
        ImmutableArray<NamedTelescope?> telescopes = [.. (request.Telescopes ?? []).Select(ReadOne)];
        ReportRepeatedNames(telescopes);
        return telescopes;
    }

    private NamedTelescope? ReadOne(TelescopeRequest? asked, int i)
    {
        if (asked is null)
        {
            return null;
        }

        var name = asked.Name ?? MadeUpName.OfTelescope(i + 1);
        var telescope = asked.Id is { } id ? FindListed(id, i)?.Telescope : TelescopeInFull(asked, name);
        return new NamedTelescope(telescope?.Name ?? asked.Id ?? name, asked.Id, telescope is null ? null : InUse(telescope, asked.PowerRange, i));
    }

    private CatalogueTelescope? FindListed(string id, int i)
    {
        var listed = catalogue?.Telescopes.GetValueOrDefault(id);
        if (listed is null && !faults.Touch(RequestPointer.Root.To(nameof(KitRequest.Catalogue))))
        {
            faults.Add(pointer.At(i).To(nameof(TelescopeRequest.Id)), FaultCode.UnknownTelescope, () => UnknownTelescope(id));
        }

        return listed;
    }

    private string UnknownTelescope(string id)
    {
        var inFull = $"give `apertureMm`, `focalLengthMm` and `focuserBarrel` instead of `{(faults.AreOfQuery ? "telescope" : "id")}`";
        if (catalogue is null)
        {
            return $"{ErrorText.Quoted(id)} cannot be looked up without a stored catalogue: name one in `catalogue`, or {inFull}.";
        }

        var suggestion = NearestName.To(id, catalogue.Telescopes.Keys) is { } nearest ? $" Did you mean `{nearest}`?" : "";
        return $"The catalogue lists no telescope {ErrorText.Quoted(id)}.{suggestion} Give the id of one it lists, or {inFull}.";
    }

    private static Telescope? TelescopeInFull(TelescopeRequest asked, string name) =>
        asked is { ApertureMm: { } aperture, FocalLengthMm: { } focalLength, FocuserBarrel: { } focuser }
            ? new Telescope(name, aperture, focalLength, focuser)
            : null;

    private TelescopeInUse? InUse(Telescope telescope, PowerRangeRequest? wish, int i)
    {
        // A range worked out from faulty figures would be blamed for what is not its fault.
        if (faults.Touch(RequestPointer.Root.To(nameof(KitRequest.Observer))) || faults.Touch(RequestPointer.Root.To(nameof(KitRequest.Site))) || faults.Touch(pointer.At(i)))
        {
            return null;
        }

        var range = PowerRange.Of(telescope, observer, request.Site?.SeeingArcsec ?? PowerRange.UsualSeeingArcsec, wish?.Lowest, wish?.Highest);
        if (range.IsWideEnough)
        {
            return TelescopeInUse.Of(telescope, range, observer.Observes);
        }

        var at = wish is { Lowest: not null } or { Highest: not null } ? pointer.At(i).To(nameof(TelescopeRequest.PowerRange)) : pointer.At(i);
        faults.Add(at, FaultCode.EmptyRange, () => EmptyRange(telescope, range));
        return null;
    }

    private static string EmptyRange(Telescope telescope, PowerRange range) => string.Create(
        CultureInfo.InvariantCulture,
        $"The powers of use in {ErrorText.Quoted(telescope.Name)} would run from {range.Lowest:0.#}x (set by {Setter(range.LowestSetBy)}) to {range.Highest:0.#}x (set by {Setter(range.HighestSetBy)}); the highest must be at least {PowerRange.LeastSpan} times the lowest. Change what sets one of them; a request with a body may also give `powerRange` other ends.");

    private static string Setter(RangeEnd end) => end switch
    {
        RangeEnd.Pupil => "the observer's pupil: `age` or `pupilMm`",
        RangeEnd.Barrel => "the longest eyepiece that `focuserBarrel` takes",
        RangeEnd.Aperture => "`apertureMm`",
        RangeEnd.Seeing => "`seeingArcsec`",
        _ => "`powerRange`",
    };

    private void ReportRepeatedNames(ImmutableArray<NamedTelescope?> telescopes)
    {
        var places = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var (i, telescope) in telescopes.Index())
        {
            if (telescope is not null && !places.TryAdd(telescope.Name, i))
            {
                var field = telescope.Id is null ? nameof(TelescopeRequest.Name) : nameof(TelescopeRequest.Id);
                faults.Add(
                    pointer.At(i).To(field),
                    FaultCode.Duplicate,
                    () => $"{ErrorText.Quoted(telescope.Name)} is the name of {pointer.At(places[telescope.Name])} too; give each telescope a name of its own.");
            }
        }
    }
}
