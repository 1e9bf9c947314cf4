using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Purchases;

/// <summary>A view with the items that make it, and how it is judged.</summary>
public sealed record KitView
{
    internal KitView(PurchaseProblem problem, Item eyepiece, bool eyepieceIsBought, Item? barlow, bool barlowIsBought, View view)
    {
        (Eyepiece, Barlow, View, NeedsPurchase) = (eyepiece, barlow, view, eyepieceIsBought || barlowIsBought);
        NotUsableBecause = view.NotUsableBecause(problem.Observer, problem.Preferences.LeastApparentFieldDeg, eyepieceIsBought);
        Drawbacks = view.DrawbacksFor(problem.Observer);
        Showing = Showing.Of(problem, eyepiece, eyepieceIsBought, barlow, view, Drawbacks);
    }

    /// <summary>The eyepiece or zoom looked into.</summary>
    public Item Eyepiece { get; }

    /// <summary>The Barlow it is looked through, or null.</summary>
    public Item? Barlow { get; }

    /// <summary>The optics of it.</summary>
    public View View { get; }

    /// <summary>Null for a usable view.</summary>
    public NotUsable? NotUsableBecause { get; }

    /// <summary>Whether the eyepiece or the Barlow is being bought.</summary>
    public bool NeedsPurchase { get; }

    /// <summary>What speaks against it, usable or not.</summary>
    public Drawbacks Drawbacks { get; }

    /// <summary>What plans make of it.</summary>
    public Showing Showing { get; }

    public bool IsUsable => NotUsableBecause is null;

    /// <summary>Usable, and nothing speaks against it.</summary>
    public bool IsComfortable => IsUsable && Drawbacks == Drawbacks.None;

    public Reach Reach => Showing.Reach;

    /// <summary>Whether the item is the eyepiece looked into, or the Barlow it is looked through.</summary>
    public bool Needs(Item item) => item.Equals(Eyepiece) || item.Equals(Barlow);
}
