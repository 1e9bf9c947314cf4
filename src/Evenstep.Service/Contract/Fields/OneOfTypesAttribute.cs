namespace Evenstep.Service.Contract.Fields;

/// <summary>Says that a record of an answer is written as one of several others, for the OpenAPI document.</summary>
[AttributeUsage(AttributeTargets.Class)]
internal sealed class OneOfTypesAttribute(params Type[] types) : Attribute
{
    public IReadOnlyList<Type> Types => types;
}
