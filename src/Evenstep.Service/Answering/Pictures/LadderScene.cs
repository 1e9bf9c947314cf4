using System.Collections.Immutable;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Pictures;

/// <summary>What a picture of power ladders shows: one or more kits for the same telescopes, one over the other.</summary>
internal sealed record LadderScene
{
    /// <summary>What it comes to, or null.</summary>
    public Sentence? Headline { get; init; }

    /// <summary>What would make the wishes possible, where they are not.</summary>
    public ImmutableArray<Sentence> Remedies { get; init; } = [];

    /// <summary>What there is to buy, in the order to name it.</summary>
    public ImmutableArray<Item> Purchases { get; init; } = [];

    /// <summary>From top to bottom, at least one. Of the last, every view is told, unless it has a heading.</summary>
    public required ImmutableArray<Stage> Stages { get; init; }

    /// <summary>Whether the last stage is what all comes to, and not one of several to choose from.</summary>
    public bool TellsLast => Stages[^1].Heading is null;

    /// <summary>Warnings for the reader.</summary>
    public required IReadOnlyList<RemarkAnswer> Cautions { get; init; }
}

/// <summary>A kit with what to call it.</summary>
internal sealed record Stage(string CaptionKey, Kit Kit)
{
    /// <summary>The kit as it is, with nothing proposed.</summary>
    public const string Kept = "picture/what-there-is";

    /// <summary>The kit with what is recommended.</summary>
    public const string Equipped = "picture/with-purchases";

    /// <summary>The kit with what somebody means to buy.</summary>
    public const string Listed = "picture/with-list";

    /// <summary>The kit with the item of a page.</summary>
    public const string WithItem = "picture/with-item";

    /// <summary>What is chosen with it, where there are several to choose from; else null.</summary>
    public Sentence? Heading { get; init; }

    /// <summary>What there is to buy for it, in the order to name it under its heading.</summary>
    public ImmutableArray<Item> Purchases { get; init; } = [];

    public Step Enough => Kit.Problem.EnoughStep;
}
