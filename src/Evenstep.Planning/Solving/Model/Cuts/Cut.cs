using Evenstep.Planning.Solving.Model.Subproblems;

namespace Evenstep.Planning.Solving.Model.Cuts;

/// <summary>
/// A constraint on the choices that every set within the question meets, and some set that was found does not. Choices
/// are told by their indices.
/// </summary>
internal abstract class Cut
{
    /// <summary>How many choices it mentions.</summary>
    public abstract int Terms { get; }

    /// <summary>Whether a set meets it.</summary>
    public abstract bool Allows(ReadOnlySpan<int> indices);

    public abstract void Keep(Master master);
}
