namespace Evenstep.Service.Catalogues.Storing;

/// <summary>The storage cannot do what is asked of it now, but may later.</summary>
internal sealed class StorageAwayException : Exception
{
    public StorageAwayException()
    {
    }

    public StorageAwayException(string message)
        : base(message)
    {
    }

    public StorageAwayException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    public static StorageAwayException NotReadYet() => new("The stored catalogues have not been read yet, so that it is not known whether there is such a catalogue.");

    public static StorageAwayException Busy() => new("Others were changing this catalogue all the time. Nothing was stored.");
}

/// <summary>What is stored is damaged or gone: only whoever runs the service can mend it.</summary>
internal sealed class StorageBrokenException : Exception
{
    public StorageBrokenException()
    {
    }

    public StorageBrokenException(string message)
        : base(message)
    {
    }

    public StorageBrokenException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}

/// <summary>The storage has no room left.</summary>
internal sealed class StorageFullException : Exception
{
    public StorageFullException()
    {
    }

    public StorageFullException(string message)
        : base(message)
    {
    }

    public StorageFullException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
