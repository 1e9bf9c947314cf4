using System.Reflection;
using Microsoft.Extensions.FileProviders;
using Microsoft.Extensions.Primitives;

namespace Evenstep.Service.Http.Hosting;

/// <summary>Files that are made as the service starts, and lie nowhere.</summary>
/// <param name="byPath">What is in each, by its path from the root, such as `/page/en.js`.</param>
internal sealed class MadeFiles(IReadOnlyDictionary<string, byte[]> byPath) : IFileProvider
{
    public IFileInfo GetFileInfo(string subpath) =>
        byPath.TryGetValue(subpath, out var content) ? new MadeFile(Path.GetFileName(subpath), content) : new NotFoundFileInfo(subpath);

    public IDirectoryContents GetDirectoryContents(string subpath) => NotFoundDirectoryContents.Singleton;

    public IChangeToken Watch(string filter) => NullChangeToken.Singleton;

    private sealed class MadeFile(string name, byte[] content) : IFileInfo
    {
        /// <summary>It changes with the program only.</summary>
        private static readonly DateTimeOffset ProgramModified = File.GetLastWriteTimeUtc(Assembly.GetExecutingAssembly().Location);

        public bool Exists => true;

        public bool IsDirectory => false;

        public long Length => content.Length;

        public DateTimeOffset LastModified => ProgramModified;

        public string Name => name;

        public string? PhysicalPath => null;

        public Stream CreateReadStream() => new MemoryStream(content, writable: false);
    }
}
