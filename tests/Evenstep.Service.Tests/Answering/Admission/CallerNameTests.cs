using System.Net;
using Evenstep.Service.Answering.Admission;

namespace Evenstep.Service.Tests.Answering.Admission;

/// <summary>Who counts as one caller.</summary>
public sealed class CallerNameTests
{
    [Theory]
    [InlineData("192.0.2.7", "192.0.2.7", true)]
    [InlineData("192.0.2.7", "192.0.2.8", false)]
    [InlineData("::ffff:192.0.2.7", "192.0.2.7", true)]
    [InlineData("2001:db8:1:2::7", "2001:db8:1:2:ffff::8", true)]
    [InlineData("2001:db8:1:2::7", "2001:db8:1:3::7", false)]
    [InlineData("::1", "127.0.0.1", false)]
    public void Without_keys_it_is_an_address_or_the_network_of_one(string one, string other, bool isSame) =>
        Assert.Equal(isSame, CallerName.Of(null, IPAddress.Parse(one)) == CallerName.Of(null, IPAddress.Parse(other)));

    [Fact]
    public void Callers_of_the_same_process_are_one() => Assert.Equal(CallerName.Of(null, null), CallerName.Of(null, null));
}
