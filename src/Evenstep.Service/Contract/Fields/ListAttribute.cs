namespace Evenstep.Service.Contract.Fields;

/// <summary>Makes a field one of several values, each as its <see cref="FieldAttribute"/> says.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal abstract class SeveralAttribute : Attribute
{
    public abstract Shape Of(Shape element);
}

/// <summary>A list, its least and greatest length included.</summary>
internal sealed class ListAttribute(int least, int most) : SeveralAttribute
{
    /// <summary>Whether no element may equal another.</summary>
    public bool Differ { get; init; }

    public override Shape Of(Shape element) => element.InList(least, most, Differ);
}

/// <summary>True, false or a list of so many at most.</summary>
internal sealed class FlagOrListAttribute(int most) : SeveralAttribute
{
    public override Shape Of(Shape element) => element.InFlagOrList(most);
}
