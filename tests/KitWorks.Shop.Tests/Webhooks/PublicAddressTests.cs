using System.Net;
using KitWorks.Shop.Webhooks;

namespace KitWorks.Shop.Tests.Webhooks;

public sealed class PublicAddressTests
{
    /// <summary>First and last addresses of the blocks in IANA's special-purpose address registries (RFC 6890), and what lies beside them.</summary>
    [Theory]
    [InlineData("0.0.0.0", false)]
    [InlineData("9.255.255.255", true)]
    [InlineData("10.0.0.0", false)]
    [InlineData("10.255.255.255", false)]
    [InlineData("11.0.0.0", true)]
    [InlineData("100.63.255.255", true)]
    [InlineData("100.64.0.0", false)]
    [InlineData("100.127.255.255", false)]
    [InlineData("100.128.0.0", true)]
    [InlineData("127.0.0.1", false)]
    [InlineData("127.255.255.254", false)]
    [InlineData("169.254.0.1", false)]
    [InlineData("169.255.0.0", true)]
    [InlineData("172.15.255.255", true)]
    [InlineData("172.16.0.0", false)]
    [InlineData("172.31.255.255", false)]
    [InlineData("172.32.0.0", true)]
    [InlineData("192.168.0.1", false)]
    [InlineData("192.169.0.0", true)]
    [InlineData("198.18.0.0", false)]
    [InlineData("203.0.113.9", false)]
    [InlineData("224.0.0.1", false)]
    [InlineData("255.255.255.255", false)]
    [InlineData("::", false)]
    [InlineData("::1", false)]
    [InlineData("::ffff:127.0.0.1", false)]
    [InlineData("::ffff:9.255.255.255", true)]
    [InlineData("64:ff9b::a00:1", false)]
    [InlineData("fc00::1", false)]
    [InlineData("fdff::1", false)]
    [InlineData("fe80::1", false)]
    [InlineData("ff02::1", false)]
    [InlineData("2001:db8::1", false)]
    [InlineData("2002:7f00:1::", false)]
    [InlineData("2600::1", true)]
    public void Is_WhenTheAddressIsSpecial_SaysNo(string address, bool isPublic) => Assert.Equal(isPublic, PublicAddress.Is(IPAddress.Parse(address)));
}
