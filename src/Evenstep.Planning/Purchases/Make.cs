using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Purchases;

/// <summary>
/// What an item's views depend on, whoever looks: the kind, the focal lengths or factors, the barrel, and what the true
/// field is worked out from. Equal by these; the hash is worked out once, for every planning sorts items by their makes.
/// </summary>
internal sealed class Make : IEquatable<Make>
{
    private readonly Traits traits;
    private readonly int hash;

    private Make(Traits traits)
    {
        this.traits = traits;
        hash = traits.GetHashCode();
    }

    public static Make Of(Optic optic) => new(optic switch
    {
        Barlow barlow => new Traits(typeof(Barlow), barlow.Barrel) { Factors = string.Join(' ', barlow.Factors) },
        Eyepiece { Purpose: EyepiecePurpose.Reticle } reticle =>
            new Traits(typeof(Eyepiece), reticle.Barrel) { IsReticle = true, Longest = reticle.FocalLengthMm },
        Ocular ocular => OfOcular(ocular),
        _ => throw new ArgumentException($"{optic.GetType()} is no optic known here.", nameof(optic)),
    });

    public bool Equals(Make? other) => ReferenceEquals(this, other) || (other is not null && hash == other.hash && traits.Equals(other.traits));

    public override bool Equals(object? obj) => Equals(obj as Make);

    public override int GetHashCode() => hash;

    private static Traits OfOcular(Ocular ocular)
    {
        var stop = (ocular as Eyepiece)?.FieldStopMm;
        return new Traits(ocular.GetType(), ocular.Barrel)
        {
            Longest = ocular.LongestFocalLengthMm,
            Shortest = ocular.ShortestFocalLengthMm,
            FieldStop = stop,
            FieldAtLongest = stop is null ? ocular.ApparentFieldAtLongestDeg : 0,
            FieldAtShortest = (ocular as Zoom)?.ApparentFieldAtShortestDeg ?? 0,
        };
    }

    private readonly record struct Traits(Type Kind, Barrel Barrel)
    {
        public string? Factors { get; init; }

        public bool IsReticle { get; init; }

        public double Longest { get; init; }

        public double Shortest { get; init; }

        public double? FieldStop { get; init; }

        public double FieldAtLongest { get; init; }

        public double FieldAtShortest { get; init; }
    }
}
