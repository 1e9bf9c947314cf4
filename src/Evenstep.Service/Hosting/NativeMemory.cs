using System.Runtime.InteropServices;

namespace Evenstep.Service.Hosting;

/// <summary>How the memory outside of the runtime's own heap is kept: that of the constraint solver and of the database.</summary>
internal static class NativeMemory
{
    /// <summary><c>M_ARENA_MAX</c> of glibc's <c>malloc.h</c>.</summary>
    private const int MostArenas = -8;

    /// <summary>
    /// By itself glibc lets up to eight heaps a processor grow, each as large as what was ever asked for in it at once: solves
    /// come and go on many threads, and what they leave behind would be kept in each. Two suffice where as many solves run as
    /// there are processors. Other C libraries do not know the setting, and need none.
    /// </summary>
    public static void Bound()
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        try
        {
            _ = SetOption(MostArenas, 2);
        }
        catch (Exception exception) when (exception is EntryPointNotFoundException or DllNotFoundException)
        {
            // Not glibc.
        }
    }

    [DllImport("libc", EntryPoint = "mallopt"), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int SetOption(int option, int value);
}
