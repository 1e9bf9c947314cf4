namespace Evenstep.Service.Contract.Fields;

/// <summary>One thing wrong with a body: what was given, what is allowed, what to change.</summary>
internal sealed record Fault(string Pointer, FaultCode Code, ErrorMessage Message);

/// <summary>Gathers all that is wrong with one body; keeps the first hundred and counts the rest.</summary>
internal sealed class Faults
{
    public const int MostShown = 100;

    private readonly List<Fault> shown = [];
    private readonly HashSet<string> missingEverywhere = new(StringComparer.Ordinal);
    private int count;

    public IReadOnlyList<Fault> Shown => shown;

    public int More => count - shown.Count;

    public bool Any => count > 0;

    /// <summary>Whether they are those of a query, where nothing can be given in full: messages then advise accordingly.</summary>
    public bool AreOfQuery { get; init; }

    /// <summary>The same faults so far, to go on from.</summary>
    public Faults Copy()
    {
        var copy = new Faults { count = count, AreOfQuery = AreOfQuery };
        copy.shown.AddRange(shown);
        copy.missingEverywhere.UnionWith(missingEverywhere);
        return copy;
    }

    /// <summary>The message is only worked out if it will be shown: a hostile body can hold very many faults.</summary>
    public void Add(RequestPointer pointer, FaultCode code, Func<ErrorMessage> message)
    {
        if (code == FaultCode.Missing && missingEverywhere.Contains(pointer.Step))
        {
            return;
        }

        count++;
        if (shown.Count < MostShown)
        {
            shown.Add(new Fault(pointer.ToString(), code, message()));
        }
    }

    /// <summary>Reports once a field that all objects of a list lack; that each of them lacks it is not reported again.</summary>
    public void AddMissingEverywhere(RequestPointer pointer, Func<ErrorMessage> message)
    {
        Add(pointer, FaultCode.Missing, message);
        missingEverywhere.Add(pointer.Step);
    }

    /// <summary>Takes over what is wrong with a body that was made of something else, by the places where that stood.</summary>
    /// <param name="others">What is wrong.</param>
    /// <param name="pointerOf">Where what a pointer points at stood; null where all has been said of that place.</param>
    /// <param name="hintOn">What else to say of a fault, with a space before it, or empty.</param>
    public void AddAll(Faults others, Func<string, RequestPointer?> pointerOf, Func<Fault, string> hintOn)
    {
        foreach (var fault in others.shown)
        {
            if (pointerOf(fault.Pointer) is { } pointer)
            {
                Add(pointer, fault.Code, () => Hinted(fault.Message, hintOn(fault)));
            }
        }

        count += others.More;
    }

    private static ErrorMessage Hinted(ErrorMessage message, string hint) =>
        hint.Length == 0 ? message : ErrorMessage.Of("error/hinted", ("message", message), ("hint", (ErrorMessage)hint));

    /// <summary>Whether something at this pointer or within it is known to be wrong.</summary>
    public bool Touch(RequestPointer pointer)
    {
        var text = pointer.ToString();
        return More > 0 || shown.Exists(fault => fault.Pointer == text || fault.Pointer.StartsWith(text + "/", StringComparison.Ordinal));
    }
}
