using System.Runtime.InteropServices;

namespace Evenstep.Service.Http.Hosting;

/// <summary>How the memory outside of the runtime's own heap is kept: that of the constraint solver and of the database.</summary>
internal static class NativeMemory
{
    /// <summary><c>M_ARENA_MAX</c> of glibc's <c>malloc.h</c>.</summary>
    private const int MostArenas = -8;

    private static readonly TimeSpan BetweenReturns = TimeSpan.FromSeconds(10);
    private static Timer? returning;

    /// <summary>
    /// By itself glibc lets up to eight heaps a processor grow, each as large as what was ever asked for in it at once, and
    /// keeps what is free in the middle of them: solves come and go on many threads, and what they leave behind would be kept in
    /// each. Two heaps suffice where as many solves run as there are processors, and now and then they give back what is free.
    /// Other C libraries do not know these calls, and need none.
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
            _ = ReturnFree(0);
            returning = new Timer(static none => _ = ReturnFree(0), null, BetweenReturns, BetweenReturns);
        }
        catch (Exception exception) when (exception is EntryPointNotFoundException or DllNotFoundException)
        {
            // Not glibc.
        }
    }

    [DllImport("libc", EntryPoint = "mallopt"), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int SetOption(int option, int value);

    [DllImport("libc", EntryPoint = "malloc_trim"), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int ReturnFree(nuint kept);
}
