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

    private ErrorMessage UnknownTelescope(string id)
    {
        var field = faults.AreOfQuery ? "telescope" : "id";
        if (catalogue is null)
        {
            return ErrorMessage.Of("error/no-stored-catalogue", ("id", ErrorText.Quoted(id)), ("field", field));
        }

        return ErrorMessage.Of(
            "error/no-such-telescope", ("id", ErrorText.Quoted(id)), ("hint", NearestName.HintOn(id, catalogue.Telescopes.Keys)), ("field", field));
    }

    private static Telescope? TelescopeInFull(TelescopeRequest asked, string name) =>
        asked is { ApertureMm: { } aperture, FocalLengthMm: { } focalLength, FocuserBarrel: { } focuser }
            ? new Telescope(name, aperture, focalLength, focuser)
            : null;

    private TelescopeInUse? InUse(Telescope telescope, PowerRangeRequest? wish, int i)
    {
        // A range worked out from faulty figures would be blamed for what is not its fault.
        if (faults.Touch(RequestPointer.Root.To(nameof(KitRequest.Observer))) || faults.Touch(RequestPointer.Root.To(nameof(KitRequest.Site)))
            || faults.Touch(pointer.At(i)))
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

    private static ErrorMessage EmptyRange(Telescope telescope, PowerRange range) => ErrorMessage.Of(
        "error/empty-range",
        ("telescope", ErrorText.Quoted(telescope.Name)),
        ("lowest", range.Lowest.ToString("0.#", CultureInfo.InvariantCulture)),
        ("lowestSetBy", Setter(range.LowestSetBy)),
        ("highest", range.Highest.ToString("0.#", CultureInfo.InvariantCulture)),
        ("highestSetBy", Setter(range.HighestSetBy)),
        ("span", PowerRange.LeastSpan));

    private static ErrorMessage Setter(RangeEnd end) => ErrorMessage.Of(end switch
    {
        RangeEnd.Pupil => "error/set-by/pupil",
        RangeEnd.Barrel => "error/set-by/barrel",
        RangeEnd.Aperture => "error/set-by/aperture",
        RangeEnd.Seeing => "error/set-by/seeing",
        _ => "error/set-by/request",
    });

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
                    () => ErrorMessage.Of(
                        "error/telescope-name-twice", ("name", ErrorText.Quoted(telescope.Name)), ("place", pointer.At(places[telescope.Name]))));
            }
        }
    }
}
