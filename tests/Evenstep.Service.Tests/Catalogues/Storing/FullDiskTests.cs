using System.Diagnostics;

namespace Evenstep.Service.Tests.Catalogues.Storing;

/// <summary>There is no room left.</summary>
public sealed class FullDiskTests
{
    private const string Path = "/v1/catalogues/shop";

    [Fact]
    public async Task A_file_that_may_grow_no_further_takes_nothing_more_and_keeps_what_it_has()
    {
        await using var service = new Service(null, ("Evenstep:DataMegabytes", "1"));

        await CheckAsync(service);
    }

    [DiskFact]
    public async Task A_disk_that_is_full_takes_nothing_more_and_keeps_what_it_has()
    {
        using var disk = new SmallDisk();
        await using var service = new Service(null, ("Evenstep:DataFolder", disk.Path));

        await CheckAsync(service);
    }

    [Theory]
    [InlineData("0")]
    [InlineData("1000001")]
    public void A_limit_that_makes_no_sense_stops_the_start(string megabytes)
    {
        using var service = new Service(null, ("Evenstep:DataMegabytes", megabytes));

        Assert.Throws<InvalidOperationException>(service.CreateClient);
    }

    private static async Task CheckAsync(Service service)
    {
        var stored = await service.SendAsync(HttpMethod.Put, Path, Wares.Json());

        var refused = await service.SendAsync(HttpMethod.Put, Path, Wares.Large(items: 1500, attributes: 10));

        Assert.Equal((507, "/problems/storage-full"), (refused.Status, refused.Problem.Type));
        Assert.Equal(stored.ETag, (await service.GetAsync(Path)).ETag);
        Assert.Equal(200, (await service.SendAsync(HttpMethod.Put, Path, Wares.Json(40))).Status);
        Assert.Equal(204, (await service.SendAsync(HttpMethod.Delete, Path)).Status);
    }
}

/// <summary>A disk of four megabytes in memory.</summary>
internal sealed class SmallDisk : IDisposable
{
    public SmallDisk() => Assert.Null(Mount(Path));

    public string Path { get; } = Directory.CreateTempSubdirectory("evenstep-disk-").FullName;

    /// <summary>Why there can be none; null if there can.</summary>
    public static string? Missing { get; } = Try();

    public void Dispose()
    {
        Run("umount", Path);
        Directory.Delete(Path);
    }

    private static string? Try()
    {
        if (!OperatingSystem.IsLinux() || !Environment.IsPrivilegedProcess)
        {
            return "A small disk can only be mounted as root on Linux.";
        }

        var path = Directory.CreateTempSubdirectory("evenstep-disk-").FullName;
        var failure = Mount(path);
        if (failure is null)
        {
            Run("umount", path);
        }

        Directory.Delete(path);
        return failure;
    }

    private static string? Mount(string path) => Run("mount", "-t", "tmpfs", "-o", "size=4m", "tmpfs", path);

    /// <summary>Null if it went well, or what was said.</summary>
    private static string? Run(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true })!;
        var said = process.StandardError.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0 ? null : $"A small disk cannot be mounted: {said.Trim()}";
    }
}

/// <summary>A fact that needs a small disk: skipped where none can be mounted.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class DiskFactAttribute : FactAttribute
{
    public DiskFactAttribute() => Skip = SmallDisk.Missing;
}
