using Evenstep.Planning.Advice;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Targets;

/// <summary>Which view to use for a target.</summary>
internal sealed record TargetAnswer
{
    /// <summary>Its id among the known targets; null for one of the request's own.</summary>
    public required string? Id { get; init; }

    /// <summary>Its designation, with any words in it in the language of the answer, or what the request calls it.</summary>
    public required Sentence Name { get; init; }

    /// <summary>What it is commonly called, in the language of the answer; null where it has no such name.</summary>
    public required Sentence? CommonName { get; init; }

    /// <summary>How wide it is, in arcminutes.</summary>
    public required double WidthArcmin { get; init; }

    /// <summary>The exit pupil that shows it best, in mm.</summary>
    public required double WantedExitPupilMm { get; init; }

    /// <summary>Whether the view shows it with enough sky around: at least 1.2 times its width.</summary>
    public required bool Fits { get; init; }

    /// <summary>Of the views wide enough the one whose exit pupil is nearest to the wanted one; the widest if none is; null without any.</summary>
    public required TargetViewAnswer? View { get; init; }
}

/// <summary>A view as it is used for a target.</summary>
internal sealed record TargetViewAnswer
{
    /// <summary>The eyepiece or zoom looked into.</summary>
    public required string EyepieceId { get; init; }

    /// <summary>The Barlow it is looked through.</summary>
    public required string? BarlowId { get; init; }

    /// <summary>The Barlow's amplification; 1 without one.</summary>
    public required double Factor { get; init; }

    /// <summary>The eyepiece's focal length, or the one to turn the zoom to, in mm.</summary>
    public required double FocalLengthMm { get; init; }

    /// <summary>The power then.</summary>
    public required double Power { get; init; }

    /// <summary>The exit pupil then, in mm.</summary>
    public required double ExitPupilMm { get; init; }

    /// <summary>The true field then, in degrees.</summary>
    public required double TrueFieldDeg { get; init; }
}

/// <summary>The targets that the service knows.</summary>
internal sealed record KnownTargetsAnswer
{
    /// <summary>By kind, the widest first.</summary>
    public required IReadOnlyList<KnownTargetAnswer> Targets { get; init; }

    /// <summary>What each `widthFrom` stands for, and where the exit pupils come from.</summary>
    public required IReadOnlyList<RemarkAnswer> Sources { get; init; }
}

/// <summary>A target that the service knows.</summary>
internal sealed record KnownTargetAnswer
{
    /// <summary>The same in every language.</summary>
    public required string Id { get; init; }

    /// <summary>Its designation, with any words in it in the language of the answer.</summary>
    public required Sentence Name { get; init; }

    /// <summary>What it is commonly called, in the language of the answer; null where it has no such name.</summary>
    public required Sentence? CommonName { get; init; }

    /// <summary>What it is; decides the exit pupil.</summary>
    public required TargetKind Kind { get; init; }

    /// <summary>How wide it is, in arcminutes; of a double star the distance of its components.</summary>
    public required double WidthArcmin { get; init; }

    /// <summary>Where the width comes from; `sources` says what that is.</summary>
    public required WidthSource WidthFrom { get; init; }

    /// <summary>The exit pupil that shows it best, in mm.</summary>
    public required double WantedExitPupilMm { get; init; }
}
