using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Agreement;

/// <summary>Turns the exhaustive solver's problems into the planner's own. Nothing is computed here.</summary>
internal static class Bridge
{
    public static PurchaseProblem ToProblem(OracleProblem from)
    {
        var observer = ToObserver(from.Observer);
        var catalogue = from.Catalogue.ToDictionary(item => item.Id, ToItem);
        return new PurchaseProblem
        {
            Telescopes = [.. from.Telescopes.Select(telescope => ToTelescope(telescope, observer, from.SeeingArcsec))],
            Observer = observer,
            Owned = [.. from.Owned.Select(owned => owned.Item is { } item ? ToItem(item) : catalogue[owned.Id])],
            Catalogue = [.. from.Catalogue.Select(item => catalogue[item.Id])],
            Limits = ToLimits(from.Limits),
            Preferences = ToPreferences(from.Preferences),
            Demands = ToDemands(from),
        };
    }

    private static Observer ToObserver(OracleObserver from) => new()
    {
        Age = from.Age,
        PupilMm = from.PupilMm,
        WearsSpectacles = from.WearsSpectacles,
        AstigmatismDioptres = from.AstigmatismDioptres,
        LeastEyeReliefMm = from.LeastEyeReliefMm,
        Observes = [.. from.Observes.Select(Named<Interest>)],
    };

    private static TelescopeInUse ToTelescope(OracleTelescope from, Observer observer, double? seeing)
    {
        var telescope = new Telescope(from.Name, from.ApertureMm, from.FocalLengthMm, Named<Barrel>(from.FocuserBarrel));
        var range = PowerRange.Of(telescope, observer, seeing ?? PowerRange.UsualSeeingArcsec, from.LowestPower, from.HighestPower);
        return TelescopeInUse.Of(telescope, range, observer.Observes);
    }

    private static Item ToItem(OracleItem from) => new(from.Id, ToOptic(from))
    {
        Price = from.Price,
        MassGrams = from.MassGrams,
        ParfocalGroup = from.ParfocalGroup,
        InStock = from.InStock,
    };

    private static Optic ToOptic(OracleItem from) => from.Kind switch
    {
        OracleKind.Barlow => new Barlow([.. from.Factors], Named<Barrel>(from.Barrel)) { FastestFocalRatio = from.FastestFocalRatio },
        OracleKind.Zoom => new Zoom(
            from.ShortestFocalLengthMm,
            from.LongestFocalLengthMm,
            from.ApparentFieldAtShortestDeg,
            from.ApparentFieldAtLongestDeg,
            from.EyeReliefMm,
            Named<Barrel>(from.Barrel))
        {
            FastestFocalRatio = from.FastestFocalRatio,
        },
        _ => Eyepiece.Of(from.FocalLengthMm, from.StatedApparentFieldDeg, from.StatedEyeReliefMm, from.FieldStopMm, Named<Barrel>(from.Barrel)) with
        {
            FastestFocalRatio = from.FastestFocalRatio,
            Purpose = from.IsReticle ? EyepiecePurpose.Reticle : EyepiecePurpose.Observing,
        },
    };

    private static Limits ToLimits(OracleLimits from)
    {
        var limits = new Limits { Budget = from.Budget, MaxPricePerItem = from.MaxPricePerItem, MaxItemMassGrams = from.MaxItemMassGrams };
        return limits with
        {
            MaxPurchases = from.MaxPurchases ?? limits.MaxPurchases,
            MaxBarlows = from.MaxBarlows ?? limits.MaxBarlows,
            AllowedOverlaps = from.AllowedOverlaps ?? limits.AllowedOverlaps,
        };
    }

    private static Preferences ToPreferences(OraclePreferences from)
    {
        var usual = new Preferences();
        return new Preferences
        {
            Prefer = from.Prefer is { } prefer ? Named<Prefer>(prefer) : usual.Prefer,
            LeastStep = from.LeastStep ?? usual.LeastStep,
            EnoughStep = from.EnoughStep ?? usual.EnoughStep,
            LeastApparentFieldDeg = from.LeastApparentFieldDeg,
            AvoidBarlows = from.Barlows is { } barlows ? barlows == OracleUse.Avoid : usual.AvoidBarlows,
            AvoidZooms = from.Zooms is { } zooms ? zooms == OracleUse.Avoid : usual.AvoidZooms,
            Exclude = [.. from.Exclude],
        };
    }

    private static Demands ToDemands(OracleProblem from)
    {
        var names = from.Telescopes.Select(telescope => telescope.Name).ToImmutableArray();
        return new Demands
        {
            MustInclude = [.. from.Preferences.MustInclude],
            MustFrame =
            [
                .. from.Preferences.MustFrame.Select(frame =>
                    new FramingDemand(frame.Name, frame.WidthDeg, frame.Telescope is { } name ? names.IndexOf(name) : null)),
            ],
            ReticleLeastPower = from.Preferences.ReticleLeastPower,
        };
    }

    private static T Named<T>(Enum value)
        where T : struct, Enum => Enum.Parse<T>(value.ToString());

    private static T Named<T>(OracleInterest value)
        where T : struct, Enum => Named<T>((Enum)value);
}
